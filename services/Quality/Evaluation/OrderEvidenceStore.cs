using LabPipeline.Quality.Rules;
using LabPipeline.Science.Order;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads runs of samples that a bench order was drawn for, in the order they reported them.</summary>
internal sealed class OrderEvidenceStore
{
    private const int AtOnce = 400;

    private static readonly SqlText ListRuns = SqlText.Load<OrderEvidenceStore>("list-ordered-runs");
    private static readonly SqlText ListSequence = SqlText.Load<OrderEvidenceStore>("list-run-sequence");

    // The colour meter reads chips in the order they came out of the fryer.
    private static readonly IReadOnlyList<(string Work, Quantity[] Quantities)> Works =
    [
        (BenchOrderKinds.Analysis, [QuantityCatalogue.GlucoseInExtract, QuantityCatalogue.TotalGlucoseInExtract, QuantityCatalogue.SucroseInExtract]),
        (BenchOrderKinds.Frying, [QuantityCatalogue.HunterL, QuantityCatalogue.CielabL]),
    ];

    /// <param name="session">Where to read.</param>
    /// <param name="barcodes">Touched samples.</param>
    public static async Task<IReadOnlyList<OrderEvidence>> LoadAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes)
    {
        var evidence = new List<OrderEvidence>();
        foreach (var (work, quantities) in Works)
        {
            var orders = await BenchOrderStore.ListOfSamplesAsync(session, work, barcodes).ConfigureAwait(false);
            if (orders.Count > 0)
            {
                evidence.AddRange(await LoadAsync(session, work, [.. quantities.Select(quantity => quantity.Id)], orders, barcodes).ConfigureAwait(false));
            }
        }

        return evidence;
    }

    private static async Task<IEnumerable<OrderEvidence>> LoadAsync(
        WarehouseSession session, string work, int[] quantities, IReadOnlyList<BenchOrder> orders, IReadOnlyCollection<string> barcodes)
    {
        var runs = new List<RunRow>();
        foreach (var part in barcodes.Chunk(AtOnce))
        {
            runs.AddRange(await session.QueryAsync<RunRow>(ListRuns, new { barcodes = part, quantities }).ConfigureAwait(false));
        }

        var evidence = new List<OrderEvidence>();
        foreach (var run in runs.DistinctBy(run => run.RunId).OrderBy(run => run.RunId))
        {
            var rows = await session.QueryAsync<SequenceRow>(ListSequence, new { run.RunId, quantities }).ConfigureAwait(false);
            evidence.AddRange(orders.Select(order => Compare(run, work, order, SequenceOf(rows))).OfType<OrderEvidence>());
        }

        return evidence;
    }

    private static OrderEvidence? Compare(RunRow run, string work, BenchOrder order, IReadOnlyList<string> reported)
    {
        var planned = order.PlannedAround(reported);
        return planned.Count == 0
            ? null
            : new OrderEvidence
            {
                Instrument = run.Instrument,
                Run = run.Run,
                Work = work,
                Trial = order.TrialCode,
                Pull = order.PullNo,
                Verdict = OrderComparison.Compare(planned, reported),
            };
    }

    /// <summary>Samples as they followed each other. Where extracts are named, the first of them tells: a second pass of all samples is no mismatch.</summary>
    private static IReadOnlyList<string> SequenceOf(IReadOnlyList<SequenceRow> rows)
    {
        var first = rows.Min(row => row.Extract ?? "");
        return OrderComparison.InSequence(rows.Where(row => (row.Extract ?? "") == first)
            .OrderBy(row => row.MeasuredAt ?? DateTimeOffset.MaxValue)
            .ThenBy(row => row.Line)
            .Select(row => row.Barcode));
    }

    private sealed class RunRow
    {
        public int RunId { get; init; }

        public string Instrument { get; init; } = "";

        public string Run { get; init; } = "";
    }

    private sealed class SequenceRow
    {
        public string Barcode { get; init; } = "";

        public string? Extract { get; init; }

        public DateTimeOffset? MeasuredAt { get; init; }

        public int Line { get; init; }
    }
}
