namespace LabPipeline.Reporting.Exports;

/// <summary>A pull that a loaded plan holds; of a trial without pulls, the trial alone.</summary>
internal sealed record PlannedPull
{
    public string TrialCode { get; init; } = "";

    public int? PullNo { get; init; }
}
