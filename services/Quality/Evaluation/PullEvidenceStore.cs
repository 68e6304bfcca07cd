using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads how far pulls are: planned samples, expected measurements, readings in effect.</summary>
internal sealed class PullEvidenceStore
{
    private static readonly SqlText ListSamples = SqlText.Load<PullEvidenceStore>("list-pull-samples");
    private static readonly SqlText ListCounts = SqlText.Load<PullEvidenceStore>("list-pull-counts");
    private static readonly SqlText ListExclusions = SqlText.Load<PullEvidenceStore>("list-pull-exclusions");
    private static readonly SqlText ListExpected = SqlText.Load<PullEvidenceStore>("list-expected-measurements");

    public static async Task<PullEvidence> LoadAsync(
        WarehouseSession session, PlannedPull pull, IReadOnlyDictionary<string, TrialSettings> trials, DateTimeOffset now)
    {
        var samples = await session.QueryAsync<SampleRow>(ListSamples, pull).ConfigureAwait(false);
        var counts = (await session.QueryAsync<CountRow>(ListCounts, pull).ConfigureAwait(false)).ToLookup(row => row.Barcode);
        var setAside = (await session.QueryAsync<ExclusionRow>(ListExclusions, pull).ConfigureAwait(false)).ToLookup(row => row.Barcode);
        var expected = await session.QueryAsync<ExpectedRow>(ListExpected, pull).ConfigureAwait(false);
        return new PullEvidence
        {
            Trial = trials[pull.TrialCode],
            Number = pull.PullNo,
            DueOn = pull.DueOn,
            OpensOn = pull.OpensOn,
            ClosesOn = pull.ClosesOn,
            Now = now,
            Samples =
            [
                .. samples.Select(sample => new PullSample
                {
                    Barcode = sample.Barcode,
                    PlotCode = sample.PlotCode,
                    Block = sample.Block,
                    BayCode = sample.BayCode,
                    Readings = counts[sample.Barcode].ToDictionary(row => row.QuantityId, row => row.Readings),
                    FirstOfQuantity = counts[sample.Barcode].Where(row => row.FirstMeasuredAt is not null).ToDictionary(row => row.QuantityId, row => row.FirstMeasuredAt!.Value),
                    SetAside = setAside[sample.Barcode].ToDictionary(row => row.QuantityId, row => row.Reason),
                    FirstMeasuredAt = counts[sample.Barcode].Min(row => row.FirstMeasuredAt),
                }),
            ],
            Expected = [.. expected.Select(row => new PullExpectation(QuantityCatalogue.Get(row.QuantityId), row.Readings))],
        };
    }

    private sealed class SampleRow
    {
        public string Barcode { get; init; } = "";

        public string PlotCode { get; init; } = "";

        public string Block { get; init; } = "";

        public string BayCode { get; init; } = "";
    }

    private sealed class CountRow
    {
        public string Barcode { get; init; } = "";

        public int QuantityId { get; init; }

        public int Readings { get; init; }

        public DateTimeOffset? FirstMeasuredAt { get; init; }
    }

    private sealed class ExclusionRow
    {
        public string Barcode { get; init; } = "";

        public int QuantityId { get; init; }

        public int Readings { get; init; }

        public string? ExcludedBy { get; init; }

        public string? Why { get; init; }

        public string Reason => AlertText.Fit(NumberText.Invariant($"{Readings} set aside by {ExcludedBy}: {Why}"));
    }

    private sealed class ExpectedRow
    {
        public int QuantityId { get; init; }

        public int Readings { get; init; }
    }
}
