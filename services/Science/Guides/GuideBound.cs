namespace LabPipeline.Science.Guides;

/// <summary>On which side of the value things are as wanted.</summary>
public enum GuideBound
{
    /// <summary>Below the value.</summary>
    Below = 1,

    /// <summary>At or below the value.</summary>
    AtMost = 2,

    /// <summary>At or above the value.</summary>
    AtLeast = 3,

    /// <summary>About the value.</summary>
    About = 4,
}
