namespace LabPipeline.Notifier.Routing;

/// <summary>The words for levels in messages, settings and the warehouse.</summary>
public static class AlertLevels
{
    /// <exception cref="ArgumentException">Found another word than block, hold or note.</exception>
    public static AlertLevel Parse(string text) => TryParse(text, out var level)
        ? level
        : throw new ArgumentException($"Found alert level '{text}'; expected block, hold or note. Update this program if a newer one wrote it.");

    public static bool TryParse(string text, out AlertLevel level)
    {
        (var known, level) = text switch
        {
            "block" => (true, AlertLevel.Block),
            "hold" => (true, AlertLevel.Hold),
            "note" => (true, AlertLevel.Note),
            _ => (false, AlertLevel.Note),
        };
        return known;
    }

    public static string NameOf(AlertLevel level) => level switch
    {
        AlertLevel.Block => "block",
        AlertLevel.Hold => "hold",
        _ => "note",
    };
}
