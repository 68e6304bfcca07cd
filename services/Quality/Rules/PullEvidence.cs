using LabPipeline.Quality.Results;

namespace LabPipeline.Quality.Rules;

/// <summary>How far one pull of a trial is, at an instant.</summary>
public sealed record PullEvidence : IEvidence
{
    public required TrialSettings Trial { get; init; }

    public required int Number { get; init; }

    public required DateOnly DueOn { get; init; }

    /// <summary>First local day on which the pull may be measured.</summary>
    public DateOnly OpensOn { get; init; }

    /// <summary>Last local day, included, on which the pull's readings are on time.</summary>
    public required DateOnly ClosesOn { get; init; }

    public required DateTimeOffset Now { get; init; }

    public required IReadOnlyList<PullSample> Samples { get; init; }

    public required IReadOnlyList<PullExpectation> Expected { get; init; }

    /// <summary>The local date in the trial's time zone.</summary>
    /// <exception cref="InvalidOperationException">The trial names no zone that exists.</exception>
    public DateOnly Today => TrialCalendar.DateOf(Now, Trial.TimeZone);

    /// <summary>Whether the last day of the window is over.</summary>
    public bool IsClosed => Today > ClosesOn;

    /// <summary>The local day on which a sample came to the bench; null while it has no reading with a time.</summary>
    public DateOnly? BenchDayOf(PullSample sample) =>
        sample.FirstMeasuredAt is { } first ? TrialCalendar.DateOf(first, Trial.TimeZone) : null;

    public string Scope => ScopeOf(Trial.TrialCode, Number);

    public string Subject => NumberText.Invariant($"{Trial.TrialCode}/{Number}");

    public string Title => NumberText.Invariant($"Pull {Number} of trial {Trial.TrialCode}");

    public string? TrialCode => Trial.TrialCode;

    public int? PullNo => Number;

    public string? Barcode => null;

    public static string ScopeOf(string trialCode, int pullNo) => NumberText.Invariant($"pull:{trialCode}/{pullNo}");
}
