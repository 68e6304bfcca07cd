using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads runs: what they weighed, what other runs of the same pulls weighed, and their fry batches.</summary>
internal sealed class RunEvidenceStore
{
    private const int AtOnce = 400;

    private static readonly SqlText ListWeighedPulls = SqlText.Load<RunEvidenceStore>("list-weighed-pulls");
    private static readonly SqlText ListFryRuns = SqlText.Load<RunEvidenceStore>("list-fry-runs");
    private static readonly SqlText FindRun = SqlText.Load<RunEvidenceStore>("find-run");
    private static readonly SqlText ListRuns = SqlText.Load<RunEvidenceStore>("list-runs");
    private static readonly SqlText ListPullsOfRuns = SqlText.Load<RunEvidenceStore>("list-pulls-of-runs");
    private static readonly SqlText ListWeights = SqlText.Load<RunEvidenceStore>("list-weights");
    private static readonly SqlText ListFryReadings = SqlText.Load<RunEvidenceStore>("list-fry-readings");

    /// <summary>Runs that weighed samples of the pulls in which <paramref name="barcodes"/> were weighed: one new session changes what its sisters mean.</summary>
    /// <param name="session">Where to read.</param>
    /// <param name="barcodes">Touched samples.</param>
    /// <param name="fileId">Only when this file holds their weights; null for any file.</param>
    public static async Task<IReadOnlyCollection<int>> ListWeighingRunsAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes, int? fileId)
    {
        var pulls = new HashSet<PullKey>();
        foreach (var part in barcodes.Chunk(AtOnce))
        {
            pulls.UnionWith(await session.QueryAsync<PullKey>(ListWeighedPulls, new { barcodes = part, fileId }).ConfigureAwait(false));
        }

        var runs = new HashSet<int>();
        foreach (var pull in pulls)
        {
            runs.UnionWith((await WeightsOfAsync(session, pull).ConfigureAwait(false)).Select(weight => weight.RunId));
        }

        return runs;
    }

    public static Task<IReadOnlyList<int>> ListFryRunsAsync(WarehouseSession session, int fileId) => session.QueryAsync<int>(ListFryRuns, new { fileId });

    /// <summary>The runs that names such as <c>balance 1/2026-01-14</c> stand for; they may hold slashes themselves.</summary>
    public static async Task<IReadOnlyCollection<int>> FindRunsAsync(WarehouseSession session, IEnumerable<string> names)
    {
        var runs = new HashSet<int>();
        foreach (var name in names)
        {
            for (var slash = name.IndexOf('/', StringComparison.Ordinal); slash >= 0; slash = name.IndexOf('/', slash + 1))
            {
                runs.UnionWith(await session.QueryAsync<int>(FindRun, new { instrument = name[..slash], run = name[(slash + 1)..] }).ConfigureAwait(false));
            }
        }

        return runs;
    }

    public static async Task<IReadOnlyList<RunEvidence>> LoadAsync(WarehouseSession session, IReadOnlyCollection<int> runIds)
    {
        var runs = new List<RunRow>();
        var pulls = new HashSet<PullKey>();
        var frying = new List<FryRow>();
        foreach (var part in runIds.Chunk(AtOnce))
        {
            var which = new { runIds = part };
            runs.AddRange(await session.QueryAsync<RunRow>(ListRuns, which).ConfigureAwait(false));
            pulls.UnionWith(await session.QueryAsync<PullKey>(ListPullsOfRuns, which).ConfigureAwait(false));
            frying.AddRange(await session.QueryAsync<FryRow>(ListFryReadings, which).ConfigureAwait(false));
        }

        var weights = new List<WeightRow>();
        foreach (var pull in pulls)
        {
            weights.AddRange(await WeightsOfAsync(session, pull).ConfigureAwait(false));
        }

        var weighed = WeighedSamples(weights);
        var fryOfRun = frying.ToLookup(row => row.RunId, row => row.Reading);
        var book = new ThresholdBook(await ThresholdStore.ListAsync(session).ConfigureAwait(false));
        return [.. runs.Select(run => Evidence(run, weighed, fryOfRun) with { Thresholds = ThresholdsOf(run, weights, book) })];
    }

    private static Task<IReadOnlyList<WeightRow>> WeightsOfAsync(WarehouseSession session, PullKey pull) => session.QueryAsync<WeightRow>(ListWeights, pull);

    private static RunEvidence Evidence(RunRow run, List<(int RunId, WeighedSample Sample)> weighed, ILookup<int, FryReading> fryOfRun)
    {
        var own = weighed.FindAll(row => row.RunId == run.RunId).ConvertAll(row => row.Sample);
        var pulls = own.Select(sample => (sample.TrialCode, sample.PullNo)).ToHashSet();
        return new RunEvidence
        {
            Instrument = run.Instrument,
            Run = run.Run,
            Weighed = own,
            WeighedElsewhere = [.. weighed.Where(row => row.RunId != run.RunId && pulls.Contains((row.Sample.TrialCode, row.Sample.PullNo))).Select(row => row.Sample)],
            FryReadings = [.. fryOfRun[run.RunId]],
        };
    }

    private static Dictionary<string, ThresholdsInForce> ThresholdsOf(RunRow run, List<WeightRow> weights, ThresholdBook book) => weights
        .Where(weight => weight.RunId == run.RunId)
        .GroupBy(weight => weight.TrialCode, StringComparer.Ordinal)
        .ToDictionary(trial => trial.Key, trial => book.At(trial.Key, trial.Min(weight => weight.MeasuredAt)), StringComparer.Ordinal);

    private static List<(int RunId, WeighedSample Sample)> WeighedSamples(List<WeightRow> weights)
    {
        var samples = new List<(int, WeighedSample)>();
        foreach (var group in weights.GroupBy(row => (row.RunId, row.Barcode)))
        {
            var row = group.First();
            var gravities = Weighing.Read(group.Select(weight => weight.Reading)).Where(piece => piece.SpecificGravity is not null).ToList();
            if (gravities.Count > 0)
            {
                var gravity = gravities.Average(piece => piece.SpecificGravity!.Value);
                samples.Add((row.RunId, new WeighedSample(
                    row.Barcode, row.TrialCode, row.PullNo, $"{row.CloneCode} / {row.Treatment}", $"{row.Instrument}/{row.Run}", gravity)
                {
                    FileName = row.FileName,
                }));
            }
        }

        return samples;
    }

    private sealed class RunRow
    {
        public int RunId { get; init; }

        public string Instrument { get; init; } = "";

        public string Run { get; init; } = "";
    }

    private sealed class WeightRow
    {
        public int RunId { get; init; }

        public string Instrument { get; init; } = "";

        public string Run { get; init; } = "";

        public string Barcode { get; init; } = "";

        public string TrialCode { get; init; } = "";

        public int PullNo { get; init; }

        public string CloneCode { get; init; } = "";

        public string Treatment { get; init; } = "";

        public long ReadingId { get; init; }

        public int QuantityId { get; init; }

        public decimal Value { get; init; }

        public int? Tuber { get; init; }

        public string FileName { get; init; } = "";

        public DateTimeOffset? MeasuredAt { get; init; }

        public SampleReading Reading => new() { ReadingId = ReadingId, Barcode = Barcode, QuantityId = QuantityId, Value = Value, Tuber = Tuber };
    }

    private sealed class FryRow
    {
        public int RunId { get; init; }

        public string RowKey { get; init; } = "";

        public int QuantityId { get; init; }

        public decimal Value { get; init; }

        public string FileName { get; init; } = "";

        public int Line { get; init; }

        public FryReading Reading => new() { RowKey = RowKey, QuantityId = QuantityId, Value = Value, FileName = FileName, Line = Line };
    }
}
