using LabPipeline.Science.Order;

namespace LabPipeline.Quality.Rules;

/// <summary>The order in which a run reported samples, held against the bench order drawn for them.</summary>
public sealed record OrderEvidence : IEvidence
{
    public const string Kind = "order:";

    public required string Instrument { get; init; }

    public required string Run { get; init; }

    /// <summary>What the order was drawn for: analysis or frying.</summary>
    public required string Work { get; init; }

    public required string Trial { get; init; }

    public required int Pull { get; init; }

    public required OrderVerdict Verdict { get; init; }

    public string Scope => Kind + Instrument + "/" + Run;

    public string Subject => NumberText.Invariant($"{Instrument}/{Run}, {Trial}/{Pull}");

    public string Title => $"Run {Run} of {Instrument}";

    public string? TrialCode => Trial;

    public int? PullNo => Pull;

    public string? Barcode => null;
}
