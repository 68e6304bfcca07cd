using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Thresholds;

/// <summary>Thresholds of trials, every version kept.</summary>
public sealed class ThresholdStore
{
    private static readonly SqlText List = SqlText.Load<ThresholdStore>("list-thresholds");
    private static readonly SqlText LastVersion = SqlText.Load<ThresholdStore>("find-threshold-version");
    private static readonly SqlText Insert = SqlText.Load<ThresholdStore>("insert-threshold");
    private static readonly SqlText ListSamples = SqlText.Load<ThresholdStore>("list-measured-samples");

    /// <summary>Every version of every threshold.</summary>
    public static Task<IReadOnlyList<ThresholdRow>> ListAsync(WarehouseSession session) => session.QueryAsync<ThresholdRow>(List);

    /// <summary>Keeps <paramref name="row"/> as the next version and has the trial's samples judged anew.</summary>
    public static async Task<ThresholdRow> SetAsync(WarehouseSession session, ThresholdRow row)
    {
        var last = await session.ScalarAsync<int>(LastVersion, row).ConfigureAwait(false);
        var kept = row with { Version = last + 1 };
        await session.ExecuteAsync(Insert, kept).ConfigureAwait(false);
        var subject = $"threshold:{row.TrialCode}/{QuantityCatalogue.Get(row.QuantityId).Name}/{row.Kind}";
        await ChangeLogStore.AddAsync(
            session, new Change { At = row.SetAt, Who = row.SetBy, What = "threshold set", Subject = subject, Why = row.Why }).ConfigureAwait(false);
        var samples = await session.QueryAsync<string>(ListSamples, row).ConfigureAwait(false);
        if (samples.Count > 0)
        {
            await ChangedSamples.TellAsync(session, samples, "threshold set", $"{subject}|{kept.Version}", row.SetAt).ConfigureAwait(false);
        }

        return kept;
    }
}
