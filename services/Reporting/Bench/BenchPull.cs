using System.Globalization;
using LabPipeline.Reporting.Planning;

namespace LabPipeline.Reporting.Bench;

/// <summary>A pull as the bench needs it.</summary>
public sealed record BenchPull
{
    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }

    public DateOnly DueOn { get; init; }

    public DateOnly OpensOn { get; init; }

    public DateOnly ClosesOn { get; init; }

    public DateOnly HarvestedOn { get; init; }

    public int TubersPerSample { get; init; }

    public string TimeZone { get; init; } = "";

    /// <summary>In the order of the plan, block after block as the plan lists them.</summary>
    public IReadOnlyList<PullSample> Samples { get; init; } = [];

    public int DaysAfterHarvest => DueOn.DayNumber - HarvestedOn.DayNumber;

    /// <summary>The local day of an instant at the trial.</summary>
    public DateOnly LocalDay(DateTimeOffset now) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, TimeZoneInfo.FindSystemTimeZoneById(TimeZone)).DateTime);

    /// <summary>Says in one line when a day is outside the pull's window; null on a day within.</summary>
    public string? Untimely(DateOnly day) =>
        day < OpensOn ? Text($"Pull {PullNo} of {TrialCode} is not open yet: today is {day:yyyy-MM-dd}, its window opens on {OpensOn:yyyy-MM-dd}.")
        : day > ClosesOn ? Text($"Pull {PullNo} of {TrialCode} is closed: today is {day:yyyy-MM-dd}, its window ended on {ClosesOn:yyyy-MM-dd}. Readings will count as late.")
        : null;

    /// <summary>The days on which both are open.</summary>
    internal PullOverlap With(BenchPull other) => new(
        TrialCode, PullNo, other.TrialCode, other.PullNo, OpensOn > other.OpensOn ? OpensOn : other.OpensOn, ClosesOn < other.ClosesOn ? ClosesOn : other.ClosesOn);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
