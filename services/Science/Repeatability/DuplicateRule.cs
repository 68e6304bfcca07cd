namespace LabPipeline.Science.Repeatability;

/// <summary>Which difference a duplicate screen compared.</summary>
public enum DuplicateRule
{
    /// <summary>100 |d| / mean, in %.</summary>
    RelativePercentDifference = 1,

    /// <summary>|d| against the quantitation limit, in the unit of the results.</summary>
    AbsoluteDifference = 2,
}
