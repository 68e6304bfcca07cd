using LabPipeline.Warehouse.Plan.Rows;

namespace LabPipeline.Warehouse.Plan;

/// <summary>The laboratory's repeatability values, each change a new version.</summary>
internal sealed class RepeatabilityStore
{
    private static readonly SqlText List = SqlText.Load<RepeatabilityStore>("list-repeatability");
    private static readonly SqlText Insert = SqlText.Load<RepeatabilityStore>("insert-repeatability");

    /// <summary>Keeps the values that were never kept before; an older document does not bring back what the laboratory has replaced since.</summary>
    /// <returns>How many were new.</returns>
    public static async Task<int> KeepAsync(WarehouseSession session, IReadOnlyList<LabRepeatability> values, DateTimeOffset now, string who)
    {
        var known = await session.QueryAsync<RepeatabilityRow>(List).ConfigureAwait(false);
        var fresh = values
            .Where(value => !known.Any(row => IsSame(row, value)))
            .Select(value => RowOf(value, known.Count(row => row.QuantityId == value.Quantity.Id) + 1, now, who))
            .ToList();
        await session.ExecuteAsync(Insert, fresh).ConfigureAwait(false);
        return fresh.Count;
    }

    private static bool IsSame(RepeatabilityRow row, LabRepeatability value) =>
        row.QuantityId == value.Quantity.Id
        && row.Constant == value.Constant
        && row.Relative == value.Relative
        && row.Pairs == value.Pairs
        && row.Source == value.Source;

    private static RepeatabilityRow RowOf(LabRepeatability value, int version, DateTimeOffset now, string who) => new()
    {
        QuantityId = value.Quantity.Id,
        Version = version,
        Constant = value.Constant,
        Relative = value.Relative,
        Pairs = value.Pairs,
        Provisional = value.IsProvisional,
        Source = value.Source,
        KeptAt = now,
        KeptBy = who,
    };
}
