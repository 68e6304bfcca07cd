namespace LabPipeline.Quality.Rules;

/// <summary>A run of an instrument: the samples weighed in it, its fry batches, and what other runs of the same pulls weighed.</summary>
public sealed record RunEvidence : IEvidence
{
    public const string Kind = "run:";

    public required string Instrument { get; init; }

    public required string Run { get; init; }

    /// <summary>Samples weighed in this run.</summary>
    public IReadOnlyList<WeighedSample> Weighed { get; init; } = [];

    /// <summary>Samples of the same pulls weighed in other runs.</summary>
    public IReadOnlyList<WeighedSample> WeighedElsewhere { get; init; } = [];

    public IReadOnlyList<FryReading> FryReadings { get; init; } = [];

    /// <summary>Limits of the trials weighed, when the run was made.</summary>
    public IReadOnlyDictionary<string, ThresholdsInForce> Thresholds { get; init; } = new Dictionary<string, ThresholdsInForce>();

    public string Scope => ScopeOf(Instrument, Run);

    public string Subject => Instrument + "/" + Run;

    public string Title => $"Run {Run} of {Instrument}";

    public string? TrialCode => Only(Weighed.Select(sample => sample.TrialCode));

    public int? PullNo => TrialCode is null ? null : Weighed.Select(sample => sample.PullNo).Distinct().Count() == 1 ? Weighed[0].PullNo : null;

    public string? Barcode => null;

    public ThresholdsInForce ThresholdsOf(string trialCode) => Thresholds.GetValueOrDefault(trialCode, ThresholdsInForce.None);

    public static string ScopeOf(string instrument, string run) => Kind + instrument + "/" + run;

    private static string? Only(IEnumerable<string> codes) => codes.Distinct(StringComparer.Ordinal).Take(2).ToList() is [var code] ? code : null;
}
