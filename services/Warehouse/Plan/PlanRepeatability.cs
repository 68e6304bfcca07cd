using LabPipeline.Warehouse.Results;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Keeps the repeatability values a plan states that were never kept before.</summary>
/// <remarks>An older document does not bring back what the laboratory has replaced since.</remarks>
internal static class PlanRepeatability
{
    /// <returns>How many were new.</returns>
    public static async Task<int> KeepAsync(WarehouseSession session, IReadOnlyList<LabRepeatability> values, DateTimeOffset now, string who)
    {
        var known = await RepeatabilityStore.ListAsync(session).ConfigureAwait(false);
        var fresh = values.Where(value => !known.Any(row => IsSame(row, value))).ToList();
        foreach (var value in fresh)
        {
            await RepeatabilityStore.KeepAsync(session, RowOf(value, now, who)).ConfigureAwait(false);
        }

        return fresh.Count;
    }

    private static bool IsSame(RepeatabilityRow row, LabRepeatability value) =>
        row.QuantityId == value.Quantity.Id
        && row.Constant == value.Constant
        && row.Relative == value.Relative
        && row.Pairs == value.Pairs
        && row.Source == value.Source;

    private static RepeatabilityRow RowOf(LabRepeatability value, DateTimeOffset now, string who) => new()
    {
        QuantityId = value.Quantity.Id,
        Constant = value.Constant,
        Relative = value.Relative,
        Pairs = value.Pairs,
        Provisional = value.IsProvisional,
        Source = value.Source,
        KeptAt = now,
        KeptBy = who,
    };
}
