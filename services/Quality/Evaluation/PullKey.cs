namespace LabPipeline.Quality.Evaluation;

/// <summary>A pull of a trial.</summary>
public sealed record PullKey
{
    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }
}
