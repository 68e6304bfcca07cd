namespace LabPipeline.Reporting.Exports;

/// <summary>What became of an export.</summary>
public enum ExportState
{
    Written,

    /// <summary>No plan of this trial is loaded; nothing was written.</summary>
    TrialNotFound,

    /// <summary>The trial plans no such pull; nothing was written.</summary>
    PullNotFound,
}
