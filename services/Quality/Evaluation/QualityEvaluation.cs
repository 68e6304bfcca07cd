using System.Text.Json;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Repeatability;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Results;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Evaluates what was touched, inside the caller's transaction: evidence in, results and alerts out.</summary>
/// <remarks>Everything is computed from what the warehouse holds at that moment, never from the message, so order and repeats do not matter.</remarks>
public sealed class QualityEvaluation(RuleSet rules, RuleLimits limits)
{
    // Bounds memory: a sample has some 150 readings.
    private const int SamplesAtOnce = 100;

    private RepeatCost FurtherExtracts => limits.TwoMoreExtractsAtOnce ? RepeatCost.Inexpensive : RepeatCost.Expensive;

    /// <summary>Computes the samples' results and judges them; barcodes in no plan are left waiting.</summary>
    public async Task SamplesAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes, DateTimeOffset now)
    {
        if (barcodes.Count == 0)
        {
            return;
        }

        var trials = await TrialStore.ListSettingsAsync(session).ConfigureAwait(false);
        var thresholds = new ThresholdBook(await ThresholdStore.ListAsync(session).ConfigureAwait(false));
        var repeatability = await SampleEvidenceStore.LoadRepeatabilityAsync(session).ConfigureAwait(false);
        foreach (var part in barcodes.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Chunk(SamplesAtOnce))
        {
            var samples = await SampleEvidenceStore.LoadAsync(session, part, trials, repeatability, FurtherExtracts, thresholds).ConfigureAwait(false);
            await ResultStore.ReplaceAsync(session, part, [.. samples.SelectMany(sample => RowsOf(sample, now))]).ConfigureAwait(false);
            await JudgeAsync(session, rules.ForSamples, samples, now).ConfigureAwait(false);
        }
    }

    /// <summary>Judges the controls of runs and the charts they belong to, and writes down which readings they put in doubt.</summary>
    /// <returns>Samples whose readings came into doubt or out of it: their results must be computed again.</returns>
    public async Task<IReadOnlySet<string>> ControlsAsync(WarehouseSession session, IReadOnlyCollection<int> runIds, DateTimeOffset now)
    {
        var touched = new HashSet<string>(StringComparer.Ordinal);
        if (runIds.Count == 0)
        {
            return touched;
        }

        var limits = await ControlEvidenceStore.LoadLimitsAsync(session).ConfigureAwait(false);
        foreach (var runId in runIds.Order())
        {
            if (await ControlEvidenceStore.LoadAsync(session, runId, limits).ConfigureAwait(false) is { } evidence)
            {
                touched.UnionWith(await ControlEvidenceStore.KeepDoubtsAsync(session, runId, evidence).ConfigureAwait(false));
                await JudgeAsync(session, rules.ForControls, [evidence], now).ConfigureAwait(false);
                var charts = await ControlChartStore.LoadAsync(session, evidence, limits).ConfigureAwait(false);
                await JudgeAsync(session, rules.ForCharts, charts, now).ConfigureAwait(false);
            }
        }

        return touched;
    }

    /// <summary>Writes down what is in doubt beside the controls of runs, without judging the runs.</summary>
    /// <returns>Samples whose readings came into doubt or out of it.</returns>
    public static async Task<IReadOnlySet<string>> DoubtsAsync(WarehouseSession session, IReadOnlyCollection<int> runIds)
    {
        var touched = new HashSet<string>(StringComparer.Ordinal);
        if (runIds.Count == 0)
        {
            return touched;
        }

        var limits = await ControlEvidenceStore.LoadLimitsAsync(session).ConfigureAwait(false);
        foreach (var runId in runIds.Order())
        {
            if (await ControlEvidenceStore.LoadAsync(session, runId, limits).ConfigureAwait(false) is { } evidence)
            {
                touched.UnionWith(await ControlEvidenceStore.KeepDoubtsAsync(session, runId, evidence).ConfigureAwait(false));
            }
        }

        return touched;
    }

    public async Task RunsAsync(WarehouseSession session, IReadOnlyCollection<int> runIds, DateTimeOffset now) =>
        await JudgeAsync(session, rules.ForRuns, await RunEvidenceStore.LoadAsync(session, runIds).ConfigureAwait(false), now).ConfigureAwait(false);

    /// <summary>Holds the runs of samples against the bench orders drawn for them; costs next to nothing where none was drawn.</summary>
    public async Task OrdersAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes, DateTimeOffset now) =>
        await JudgeAsync(session, rules.ForOrders, await OrderEvidenceStore.LoadAsync(session, barcodes).ConfigureAwait(false), now).ConfigureAwait(false);

    public async Task FilesAsync(WarehouseSession session, IReadOnlyCollection<int> fileIds, DateTimeOffset now) =>
        await JudgeAsync(session, rules.ForFiles, await FileEvidenceStore.LoadAsync(session, fileIds).ConfigureAwait(false), now).ConfigureAwait(false);

    public async Task PullsAsync(WarehouseSession session, IReadOnlyCollection<PlannedPull> pulls, DateTimeOffset now)
    {
        var trials = await TrialStore.ListSettingsAsync(session).ConfigureAwait(false);
        foreach (var pull in pulls)
        {
            var evidence = await PullEvidenceStore.LoadAsync(session, pull, trials, now).ConfigureAwait(false);
            await JudgeAsync(session, rules.ForPulls, [evidence], now).ConfigureAwait(false);
            await KeepGridAsync(session, evidence).ConfigureAwait(false);
        }
    }

    /// <summary>Judges the files held now, and clears the alerts of those that are held no more.</summary>
    public async Task HeldFilesAsync(WarehouseSession session, DateTimeOffset now)
    {
        var held = await FileEvidenceStore.ListHeldAsync(session, now).ConfigureAwait(false);
        var told = await AlertStore.ListOpenByKindAsync(session, HeldFileEvidence.Kind).ConfigureAwait(false);
        var scopes = held.Select(file => file.Scope).Concat(told.Select(alert => alert.Scope)).Distinct(StringComparer.Ordinal).ToList();
        await AlertLedger.ApplyAsync(session, scopes, [.. held.SelectMany(file => RuleRunner.Run(rules.ForHeldFiles, file))], now).ConfigureAwait(false);
    }

    /// <summary>Judges the messages parked now, and clears the alerts of queues that hold none any more.</summary>
    public async Task ParkedMessagesAsync(WarehouseSession session, DateTimeOffset now)
    {
        var parked = ParkedEvidence.Of(await ParkedMessageStore.ListAsync(session).ConfigureAwait(false));
        var told = await AlertStore.ListOpenByKindAsync(session, ParkedMessagesEvidence.Kind).ConfigureAwait(false);
        var scopes = parked.Select(queue => queue.Scope).Concat(told.Select(alert => alert.Scope)).Distinct(StringComparer.Ordinal).ToList();
        await AlertLedger.ApplyAsync(session, scopes, [.. parked.SelectMany(queue => RuleRunner.Run(rules.ForParkedMessages, queue))], now).ConfigureAwait(false);
    }

    /// <summary>Judges what the newest audit of the warehouse found.</summary>
    public async Task AuditAsync(WarehouseSession session, DateTimeOffset now)
    {
        if (await WarehouseAudits.LastAsync(session).ConfigureAwait(false) is { } audit)
        {
            var evidence = new AuditEvidence { HasFaults = audit.What == WarehouseAudits.WithFaults, Found = audit.Why, At = audit.At };
            await JudgeAsync(session, rules.ForAudits, [evidence], now).ConfigureAwait(false);
        }
    }

    /// <summary>Judges what channels owe, and clears the alerts of those that owe nothing any more.</summary>
    public async Task DeliveriesAsync(WarehouseSession session, DateTimeOffset now)
    {
        var owed = await DeliveryEvidenceStore.ListAsync(session, now).ConfigureAwait(false);
        var told = await AlertStore.ListOpenByKindAsync(session, DeliveryEvidence.Kind).ConfigureAwait(false);
        var scopes = owed.Select(channel => channel.Scope).Concat(told.Select(alert => alert.Scope)).Distinct(StringComparer.Ordinal).ToList();
        await AlertLedger.ApplyAsync(session, scopes, [.. owed.SelectMany(channel => RuleRunner.Run(rules.ForChannels, channel))], now).ConfigureAwait(false);
    }

    private static async Task KeepGridAsync(WarehouseSession session, PullEvidence evidence)
    {
        // Without a time zone there is no calendar; the rules have said so.
        if (TrialCalendar.Exists(evidence.Trial.TimeZone))
        {
            await SeasonGridStore.ReplaceAsync(session, evidence.Trial.TrialCode, evidence.Number, SeasonGrid.Of(evidence)).ConfigureAwait(false);
        }
    }

    private static async Task JudgeAsync<TEvidence>(
        WarehouseSession session, IReadOnlyList<IRule<TEvidence>> rules, IReadOnlyList<TEvidence> evidence, DateTimeOffset now)
        where TEvidence : IEvidence
    {
        if (evidence.Count > 0)
        {
            var findings = evidence.SelectMany(item => RuleRunner.Run(rules, item)).ToList();
            await AlertLedger.ApplyAsync(session, [.. evidence.Select(item => item.Scope)], findings, now).ConfigureAwait(false);
        }
    }

    private static IEnumerable<SampleResultRow> RowsOf(SampleEvidence sample, DateTimeOffset now) => sample.Computed.Results.Select(result => new SampleResultRow
    {
        Barcode = sample.Sample.Barcode,
        QuantityId = result.Quantity.Id,
        Value = result.Value,
        BelowLimit = result.BelowLimit,
        N = result.N,
        S = result.S,
        Basis = result.Basis,
        FromReadings = JsonSerializer.Serialize(result.FromReadings),
        InDoubt = result.InDoubt,
        ComputedAt = now,
    });
}
