using System.Globalization;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Results;

/// <summary>The laboratory's own repeatabilities, every version kept.</summary>
public sealed class RepeatabilityStore
{
    private static readonly SqlText List = SqlText.Load<RepeatabilityStore>("list-repeatability");
    private static readonly SqlText LastVersion = SqlText.Load<RepeatabilityStore>("find-repeatability-version");
    private static readonly SqlText Insert = SqlText.Load<RepeatabilityStore>("insert-repeatability");

    /// <summary>Every version of every quantity, the version in use first.</summary>
    public static Task<IReadOnlyList<RepeatabilityRow>> ListAsync(WarehouseSession session) => session.QueryAsync<RepeatabilityRow>(List);

    /// <summary>Keeps <paramref name="row"/> as the next version of its quantity; its version number is given here.</summary>
    public static async Task<RepeatabilityRow> KeepAsync(WarehouseSession session, RepeatabilityRow row)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(row.Constant);
        ArgumentOutOfRangeException.ThrowIfNegative(row.Relative);
        var last = await session.ScalarAsync<int>(LastVersion, new { row.QuantityId }).ConfigureAwait(false);
        var kept = row with { Version = last + 1 };
        await session.ExecuteAsync(Insert, kept).ConfigureAwait(false);
        var name = QuantityCatalogue.Get(row.QuantityId).Name;
        await ChangeLogStore.AddAsync(session, new Change
        {
            At = row.KeptAt,
            Who = row.KeptBy,
            What = "repeatability kept",
            Subject = "repeatability:" + name,
            Why = string.Create(
                CultureInfo.InvariantCulture, $"version {kept.Version}: constant {row.Constant}, relative {row.Relative}, {row.Pairs} pairs; {row.Source}"),
        }).ConfigureAwait(false);
        return kept;
    }
}
