using LabPipeline.Quality.Results;

namespace LabPipeline.Quality.Rules;

/// <summary>Everything that is known about one sample.</summary>
public sealed record SampleEvidence : IEvidence
{
    public required SampleIdentity Sample { get; init; }

    public required TrialSettings Trial { get; init; }

    public required SampleReadings Readings { get; init; }

    /// <summary>Readings that arrived later with another value for the same key.</summary>
    public required IReadOnlyList<ContestedReading> Contested { get; init; }

    public required SampleComputation Computed { get; init; }

    /// <summary>The trial's limits when the sample was measured.</summary>
    public ThresholdsInForce Thresholds { get; init; } = ThresholdsInForce.None;

    public string Scope => ScopeOf(Sample.Barcode);

    public string Subject => Sample.Barcode;

    public string Title => "Sample " + Sample.Barcode;

    public string? TrialCode => Sample.TrialCode;

    public int? PullNo => Sample.PullNo;

    public string? Barcode => Sample.Barcode;

    public static string ScopeOf(string barcode) => "sample:" + barcode;
}
