namespace LabPipeline.Reporting.Report;

/// <summary>How making a report ended.</summary>
public enum SeasonReportState
{
    Made,

    /// <summary>No plan of this trial is loaded.</summary>
    TrialNotFound,

    /// <summary>No report of this version was locked.</summary>
    VersionNotFound,

    /// <summary>Made again from the locked data, but by another version of the program and with other bytes.</summary>
    Differs,
}
