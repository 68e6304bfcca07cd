using System.Text.Json;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Repeatability;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Results;

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
        var repeatability = await SampleEvidenceStore.LoadRepeatabilityAsync(session).ConfigureAwait(false);
        foreach (var part in barcodes.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Chunk(SamplesAtOnce))
        {
            var samples = await SampleEvidenceStore.LoadAsync(session, part, trials, repeatability, FurtherExtracts).ConfigureAwait(false);
            await ResultStore.ReplaceAsync(session, part, [.. samples.SelectMany(sample => RowsOf(sample, now))]).ConfigureAwait(false);
            await JudgeAsync(session, rules.ForSamples, samples, now).ConfigureAwait(false);
        }
    }

    public async Task RunsAsync(WarehouseSession session, IReadOnlyCollection<int> runIds, DateTimeOffset now) =>
        await JudgeAsync(session, rules.ForRuns, await RunEvidenceStore.LoadAsync(session, runIds).ConfigureAwait(false), now).ConfigureAwait(false);

    public async Task FilesAsync(WarehouseSession session, IReadOnlyCollection<int> fileIds, DateTimeOffset now) =>
        await JudgeAsync(session, rules.ForFiles, await FileEvidenceStore.LoadAsync(session, fileIds).ConfigureAwait(false), now).ConfigureAwait(false);

    public async Task PullsAsync(WarehouseSession session, IReadOnlyCollection<PlannedPull> pulls, DateTimeOffset now)
    {
        var trials = await TrialStore.ListSettingsAsync(session).ConfigureAwait(false);
        foreach (var pull in pulls)
        {
            var evidence = await PullEvidenceStore.LoadAsync(session, pull, trials, now).ConfigureAwait(false);
            await JudgeAsync(session, rules.ForPulls, [evidence], now).ConfigureAwait(false);
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
        ComputedAt = now,
    });
}
