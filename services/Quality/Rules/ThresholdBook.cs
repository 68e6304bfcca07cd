using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Rules;

/// <summary>Every threshold trials have set, with its history.</summary>
public sealed class ThresholdBook(IEnumerable<ThresholdRow> rows)
{
    private readonly ILookup<string, ThresholdRow> _byTrial = rows.ToLookup(row => row.TrialCode, StringComparer.Ordinal);

    /// <summary>A laboratory that has set none.</summary>
    public static ThresholdBook Empty { get; } = new([]);

    /// <summary>The thresholds that decide about what a trial measured at an instant; null when the files state none, and then the newest decide.</summary>
    public ThresholdsInForce At(string trialCode, DateTimeOffset? measuredAt) => new(
        _byTrial[trialCode].Where(row => measuredAt is null || row.InForceFrom <= measuredAt)
            .GroupBy(row => (row.QuantityId, row.Kind))
            .ToDictionary(versions => versions.Key, versions => versions.OrderBy(row => row.InForceFrom).ThenBy(row => row.Version).Last().Value));
}
