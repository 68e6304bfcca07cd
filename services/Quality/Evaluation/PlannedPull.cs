namespace LabPipeline.Quality.Evaluation;

/// <summary>A pull's calendar, as the plan holds it.</summary>
public sealed record PlannedPull
{
    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }

    public DateOnly DueOn { get; init; }

    public DateOnly OpensOn { get; init; }

    public DateOnly ClosesOn { get; init; }

    public string TimeZone { get; init; } = "";

    public PullKey Key => new() { TrialCode = TrialCode, PullNo = PullNo };
}
