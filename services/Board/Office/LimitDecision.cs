using System.Globalization;
using LabPipeline.Board.Layout;

namespace LabPipeline.Board.Office;

/// <summary>Who decides about a limit, why, and from which day on.</summary>
/// <param name="Who">The person signed in.</param>
/// <param name="Why">As typed.</param>
/// <param name="From">First day (UTC) on which it decides, as typed; empty for now.</param>
internal sealed record LimitDecision(string Who, string? Why, string? From)
{
    /// <summary>What keeps it from being a decision; null when nothing does, and <paramref name="from"/> is the instant it decides from.</summary>
    public string? Fault(DateTimeOffset now, out DateTimeOffset from)
    {
        from = now;
        if (string.IsNullOrWhiteSpace(Why))
        {
            return Said.ReasonMissing;
        }

        if (string.IsNullOrEmpty(From))
        {
            return null;
        }

        if (!DateOnly.TryParseExact(From, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return Said.NotADay;
        }

        from = new DateTimeOffset(day.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
        return null;
    }
}
