using System.Globalization;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>The pulls of trials as an iCalendar file (RFC 5545).</summary>
/// <remarks>
/// All days are local bench days, so events are all-day events without zone and stay on their day wherever the file is opened. A UID names
/// trial, season, pull and event and never changes, so that a file read in again moves events instead of doubling them.
/// </remarks>
public static class PullCalendarFile
{
    private const string Product = "-//LabPipeline//Pull calendar 1//EN";

    /// <param name="plans">The trials, in the order of the file.</param>
    /// <param name="now">When the file is made.</param>
    public static string Of(IReadOnlyList<TrialPlan> plans, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(plans);
        var calendar = new Ical.Net.Calendar { ProductId = Product };
        foreach (var plan in plans)
        {
            foreach (var pull in plan.Pulls)
            {
                calendar.Events.Add(DueDay(plan, pull, now));
                calendar.Events.Add(Window(plan, pull, now));
            }
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static CalendarEvent DueDay(TrialPlan plan, TrialPull pull, DateTimeOffset now) => Event(
        plan, pull, "due", pull.DueOn, pull.DueOn, now,
        Text($"{plan.Code} pull {pull.Number}: take samples out"),
        Text($"Day {DaysAfterHarvest(plan, pull.DueOn)} after harvest. {plan.Plots.Count} samples of {plan.SampleSize.Tubers} tubers from bay {Bays(plan)}. Readings are on time from {pull.OpensOn:yyyy-MM-dd} to {pull.ClosesOn:yyyy-MM-dd}."));

    private static CalendarEvent Window(TrialPlan plan, TrialPull pull, DateTimeOffset now) => Event(
        plan, pull, "window", pull.OpensOn, pull.ClosesOn, now,
        Text($"{plan.Code} pull {pull.Number}: bench days"),
        Text($"Days {DaysAfterHarvest(plan, pull.OpensOn)} to {DaysAfterHarvest(plan, pull.ClosesOn)} after harvest: readings of pull {pull.Number} count as on time."));

    private static CalendarEvent Event(
        TrialPlan plan, TrialPull pull, string what, DateOnly first, DateOnly last, DateTimeOffset now, string summary, string description) => new()
        {
            Uid = Text($"{plan.Code}.{plan.Season}.pull-{pull.Number}.{what}@labpipeline.invalid").ToLowerInvariant(),
            DtStamp = new CalDateTime(now.UtcDateTime, CalDateTime.UtcTzId),
            Start = new CalDateTime(first),
            // The end of an all-day event is the day after (RFC 5545, 3.6.1).
            End = new CalDateTime(last.AddDays(1)),
            Summary = summary,
            Description = description,
            Location = plan.Site,
            Transparency = Ical.Net.TransparencyType.Transparent,
        };

    private static int DaysAfterHarvest(TrialPlan plan, DateOnly day) => day.DayNumber - plan.HarvestedOn.DayNumber;

    private static string Bays(TrialPlan plan) => string.Join(", ", plan.Plots.Select(plot => plot.BayCode).Distinct(StringComparer.Ordinal));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
