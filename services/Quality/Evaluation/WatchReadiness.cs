using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Whether absence of readings means anything yet: only when all that has arrived has been read and evaluated.</summary>
internal static class WatchReadiness
{
    private const string IntakePrefix = "intake-";

    /// <returns>Why it means nothing yet, or null when it does.</returns>
    public static string? WhyNot(IEnumerable<Heartbeat> heartbeats, int unhandled)
    {
        var intakes = heartbeats.Where(beat => beat.Service.StartsWith(IntakePrefix, StringComparison.Ordinal)).ToList();
        if (intakes.Count == 0)
        {
            return "no intake has reported yet";
        }

        var behind = intakes.Where(beat => beat.CaughtUpAt is null).Select(beat => beat.Service).Order(StringComparer.Ordinal).ToList();
        if (behind.Count > 0)
        {
            return $"{string.Join(", ", behind)} not caught up since start";
        }

        return unhandled > 0 ? $"{unhandled} messages not evaluated yet" : null;
    }
}
