namespace LabPipeline.Quality.Rules;

/// <summary>The controls of a run and the readings that depend on them.</summary>
public sealed record ControlEvidence : IEvidence
{
    public const string Kind = "controls:";

    public required string Instrument { get; init; }

    public required string Run { get; init; }

    /// <summary>Every control of the run, judged or not.</summary>
    public IReadOnlyList<ControlPoint> Points { get; init; } = [];

    public required IReadOnlyList<ControlVerdict> Verdicts { get; init; }

    /// <summary>Readings of the quantities whose control failed.</summary>
    public IReadOnlyList<ControlledReading> Readings { get; init; } = [];

    /// <summary>Readings beside a failed control, whether a person has released them or not.</summary>
    public required IReadOnlyList<ControlledReading> Bracketed { get; init; }

    public IEnumerable<ControlVerdict> Failed => Verdicts.Where(verdict => !verdict.Passed);

    public string Scope => Kind + Subject;

    public string Subject => Instrument + "/" + Run;

    public string Title => $"Run {Run} of {Instrument}";

    public string? TrialCode => Only(Bracketed.Select(reading => reading.TrialCode));

    public int? PullNo => TrialCode is not null && Bracketed.Select(reading => reading.PullNo).Distinct().Count() == 1 ? Bracketed[0].PullNo : null;

    public string? Barcode => null;

    private static string? Only(IEnumerable<string?> codes) => codes.Distinct(StringComparer.Ordinal).Take(2).ToList() is [{ } code] ? code : null;
}
