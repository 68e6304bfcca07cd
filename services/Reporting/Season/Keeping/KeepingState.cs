namespace LabPipeline.Reporting.Season.Keeping;

/// <summary>Whether a mean crossed its limit.</summary>
internal enum KeepingState
{
    Crossed,

    /// <summary>Still within the limit at the last pull: keeping time is longer than the days observed.</summary>
    NotReached,

    /// <summary>Out of the limit at the first pull already.</summary>
    OutFromTheStart,
}
