using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Quality.Rules;

/// <summary>Levels as the warehouse writes them.</summary>
public static class FindingLevels
{
    public static string TextOf(FindingLevel level) => level switch
    {
        FindingLevel.Block => AlertLevels.Block,
        FindingLevel.Hold => AlertLevels.Hold,
        _ => AlertLevels.Note,
    };

    /// <exception cref="ArgumentException">No level is written like this.</exception>
    public static FindingLevel Read(string text) => text switch
    {
        AlertLevels.Block => FindingLevel.Block,
        AlertLevels.Hold => FindingLevel.Hold,
        AlertLevels.Note => FindingLevel.Note,
        _ => throw new ArgumentException($"Found the alert level '{text}', expected block, hold or note.", nameof(text)),
    };
}
