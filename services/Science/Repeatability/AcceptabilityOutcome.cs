namespace LabPipeline.Science.Repeatability;

/// <summary>Where the acceptability check stands.</summary>
public enum AcceptabilityOutcome
{
    /// <summary>The results agree: the final result is their mean.</summary>
    Mean = 1,

    /// <summary>They still disagree at the end of the procedure: the final result is their median.</summary>
    Median = 2,

    /// <summary>More results are needed before there is a final result.</summary>
    ObtainMore = 3,

    /// <summary>More would be needed and cannot be had; the procedure gives no final result.</summary>
    Unresolved = 4,
}
