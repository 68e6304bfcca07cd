using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Rules;

/// <summary>Limits of every control chart, with their history.</summary>
public sealed class ControlLimitBook(IEnumerable<ControlLimitRow> rows)
{
    private readonly ILookup<(string, string, int), ControlLimitRow> _byChart = rows.ToLookup(row => (row.Instrument, row.Material, row.QuantityId));

    /// <summary>The limits that decide about a control measured at an instant; null when none were in force.</summary>
    public ControlLimitRow? Find(string instrument, string material, int quantityId, DateTimeOffset? measuredAt) => _byChart[(instrument, material, quantityId)]
        .Where(row => measuredAt is null || row.InForceFrom <= measuredAt)
        .OrderBy(row => row.InForceFrom)
        .ThenBy(row => row.Version)
        .LastOrDefault();
}
