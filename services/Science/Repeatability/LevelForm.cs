namespace LabPipeline.Science.Repeatability;

/// <summary>How the repeatability standard deviation depends on the level.</summary>
public enum LevelForm
{
    /// <summary>s = a + b m, both not negative (relationship II of ISO 5725-2).</summary>
    Linear = 1,

    /// <summary>s = b m, where the line would start below zero (relationship I).</summary>
    Proportional = 2,

    /// <summary>s = a, where the line would fall with the level.</summary>
    Constant = 3,
}
