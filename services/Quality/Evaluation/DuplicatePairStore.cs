using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Duplicate extracts measured so far, for the laboratory's own repeatability.</summary>
public sealed class DuplicatePairStore
{
    private const int SamplesAtOnce = 100;

    private static readonly SqlText ListDuplicated = SqlText.Load<DuplicatePairStore>("list-duplicated-barcodes");

    public static async Task<IReadOnlyList<DuplicatePair>> ListAsync(WarehouseSession session, Quantity quantity)
    {
        var trials = await TrialStore.ListSettingsAsync(session).ConfigureAwait(false);
        var pairs = new List<DuplicatePair>();
        foreach (var part in (await session.QueryAsync<string>(ListDuplicated).ConfigureAwait(false)).Chunk(SamplesAtOnce))
        {
            var samples = await SampleEvidenceStore.LoadAsync(session, part, trials, RepeatabilityTable.Provisional, RepeatCost.Expensive, ThresholdBook.Empty).ConfigureAwait(false);
            pairs.AddRange(RepeatabilityReview.PairsOf(samples.Select(sample => sample.Computed), quantity));
        }

        return pairs;
    }
}
