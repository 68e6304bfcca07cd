using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Controls;

/// <summary>Limits of control charts, every version kept.</summary>
public sealed class ControlLimitStore
{
    private static readonly SqlText List = SqlText.Load<ControlLimitStore>("list-control-limits");
    private static readonly SqlText LastVersion = SqlText.Load<ControlLimitStore>("find-control-limit-version");
    private static readonly SqlText Insert = SqlText.Load<ControlLimitStore>("insert-control-limit");
    private static readonly SqlText ListSamples = SqlText.Load<ControlLimitStore>("list-samples-under-control");

    /// <summary>Every version of every chart.</summary>
    public static Task<IReadOnlyList<ControlLimitRow>> ListAsync(WarehouseSession session) => session.QueryAsync<ControlLimitRow>(List);

    /// <summary>Keeps <paramref name="row"/> as the next version of its chart and has the samples measured under it judged anew.</summary>
    public static async Task<ControlLimitRow> KeepAsync(WarehouseSession session, ControlLimitRow row)
    {
        var last = await session.ScalarAsync<int>(LastVersion, row).ConfigureAwait(false);
        var kept = row with { Version = last + 1 };
        await session.ExecuteAsync(Insert, kept).ConfigureAwait(false);
        var subject = $"control:{row.Instrument}/{row.Material}/{QuantityCatalogue.Get(row.QuantityId).Name}";
        await ChangeLogStore.AddAsync(session, new Change
        {
            At = row.DecidedAt,
            Who = row.DecidedBy,
            What = row.Kind == ControlLimitKinds.Frozen ? "control limits frozen" : "control target stated",
            Subject = subject,
            Why = row.Why,
        }).ConfigureAwait(false);
        var samples = await session.QueryAsync<string>(ListSamples, row).ConfigureAwait(false);
        if (samples.Count > 0)
        {
            await ChangedSamples.TellAsync(session, samples, $"limits of {row.Material} changed", $"{subject}|{kept.Version}", row.DecidedAt).ConfigureAwait(false);
        }

        return kept;
    }
}
