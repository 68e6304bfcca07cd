namespace LabPipeline.Science.Repeatability;

/// <summary>What a further test result costs; decides how the procedure asks for more.</summary>
public enum RepeatCost
{
    /// <summary>Two more at once: ISO 5725-6, 5.2.2.1.</summary>
    Inexpensive = 1,

    /// <summary>One more at a time: ISO 5725-6, 5.2.2.2.</summary>
    Expensive = 2,
}
