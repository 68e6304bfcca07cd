using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads everything known about samples in a few set-based queries and computes their results.</summary>
internal sealed class SampleEvidenceStore
{
    private const int FilesAtOnce = 400;

    private static readonly SqlText ListSamples = SqlText.Load<SampleEvidenceStore>("list-sample-identities");
    private static readonly SqlText ListReadings = SqlText.Load<SampleEvidenceStore>("list-readings-in-effect");
    private static readonly SqlText ListContested = SqlText.Load<SampleEvidenceStore>("list-contested-readings");
    private static readonly SqlText ListMethods = SqlText.Load<SampleEvidenceStore>("list-method-facts");

    /// <param name="session">Where to read.</param>
    /// <param name="barcodes">At most 400; those in no plan are left out.</param>
    /// <param name="trials">Settings by trial.</param>
    /// <param name="repeatability">Repeatability in use.</param>
    /// <param name="furtherExtracts">How further extracts are added.</param>
    /// <param name="thresholds">Limits trials have set.</param>
    public static async Task<IReadOnlyList<SampleEvidence>> LoadAsync(
        WarehouseSession session,
        IReadOnlyCollection<string> barcodes,
        IReadOnlyDictionary<string, TrialSettings> trials,
        RepeatabilityTable repeatability,
        RepeatCost furtherExtracts,
        ThresholdBook thresholds)
    {
        var samples = await session.QueryAsync<SampleIdentity>(ListSamples, new { barcodes }).ConfigureAwait(false);
        var readings = await session.QueryAsync<SampleReading>(ListReadings, new { barcodes }).ConfigureAwait(false);
        var contested = (await session.QueryAsync<ContestedReading>(ListContested, new { barcodes }).ConfigureAwait(false)).ToLookup(row => row.Barcode);
        var methods = await LoadMethodsAsync(session, [.. readings.Select(reading => reading.FileId).Distinct()]).ConfigureAwait(false);
        var bySample = readings.ToLookup(reading => reading.Barcode);
        return
        [
            .. samples.Select(sample =>
            {
                var own = new SampleReadings(bySample[sample.Barcode], methods);
                var trial = trials[sample.TrialCode];
                return new SampleEvidence
                {
                    Sample = sample,
                    Trial = trial,
                    Readings = own,
                    Contested = [.. contested[sample.Barcode]],
                    Computed = SampleResults.Compute(own, trial, repeatability, furtherExtracts, !sample.NoMoreExtracts),
                    Thresholds = thresholds.At(sample.TrialCode, own.All.Min(reading => reading.MeasuredAt)),
                };
            }),
        ];
    }

    /// <summary>The repeatability in use: the highest version kept for each quantity, else the provisional one.</summary>
    public static async Task<RepeatabilityTable> LoadRepeatabilityAsync(WarehouseSession session)
    {
        var rows = await RepeatabilityStore.ListAsync(session).ConfigureAwait(false);
        return new RepeatabilityTable(rows.GroupBy(row => row.QuantityId).Select(versions => versions.MaxBy(row => row.Version)!)
            .Select(row => new RepeatabilityModel(QuantityCatalogue.Get(row.QuantityId), row.Constant, row.Relative, row.Provisional, row.Source)));
    }

    private static async Task<IReadOnlyDictionary<int, MethodFacts>> LoadMethodsAsync(WarehouseSession session, IReadOnlyCollection<int> fileIds)
    {
        var methods = new Dictionary<int, MethodFacts>();
        foreach (var part in fileIds.Chunk(FilesAtOnce))
        {
            foreach (var row in await session.QueryAsync<MethodRow>(ListMethods, new { fileIds = part }).ConfigureAwait(false))
            {
                methods.Add(row.FileId, MethodFacts.Parse(row.Facts));
            }
        }

        return methods;
    }

    private sealed class MethodRow
    {
        public int FileId { get; init; }

        public string? Facts { get; init; }
    }
}
