using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>A file's readings are stored: evaluates its samples, and with its last part its runs and the file itself.</summary>
public sealed class ReadingsRecordedConsumer(LabWarehouse warehouse, RelaySignal relay, TimeProvider time, QualityEvaluation evaluation)
    : OnceConsumer<ReadingsRecorded>(warehouse, relay, time)
{
    public const string Endpoint = "quality-readings-recorded";

    protected override string ConsumerName => Endpoint;

    protected override async Task HandleAsync(ReadingsRecorded message, WarehouseSession session, DateTimeOffset now)
    {
        var barcodes = await WithDoubtsAsync(message, session, now).ConfigureAwait(false);
        await evaluation.SamplesAsync(session, barcodes, now).ConfigureAwait(false);
        var runs = await RunEvidenceStore.ListWeighingRunsAsync(session, message.SampleBarcodes, message.FileId).ConfigureAwait(false);
        if (message.Part < message.Parts)
        {
            await evaluation.RunsAsync(session, runs, now).ConfigureAwait(false);
            return;
        }

        await evaluation.OrdersAsync(session, message.SampleBarcodes, now).ConfigureAwait(false);
        var frying = await RunEvidenceStore.ListFryRunsAsync(session, message.FileId).ConfigureAwait(false);
        await evaluation.RunsAsync(session, [.. runs.Union(frying)], now).ConfigureAwait(false);
        var refused = await FileEvidenceStore.ListEarlierRefusedAsync(session, message.FileId).ConfigureAwait(false);
        await evaluation.FilesAsync(session, [message.FileId, .. refused], now).ConfigureAwait(false);
    }

    /// <summary>Controls are judged once for a file, with its last part, and before the samples whose readings they vouch for.</summary>
    private async Task<IReadOnlyCollection<string>> WithDoubtsAsync(ReadingsRecorded message, WarehouseSession session, DateTimeOffset now)
    {
        if (message.Part < message.Parts)
        {
            return message.SampleBarcodes;
        }

        var controlled = await ControlEvidenceStore.ListRunsAsync(session, message.SampleBarcodes, message.FileId).ConfigureAwait(false);
        var judged = await evaluation.ControlsAsync(session, controlled, now).ConfigureAwait(false);

        // The same samples may lie in another file that is stored but not judged yet; its failed controls put readings in doubt already.
        var beside = await ControlEvidenceStore.ListRunsAsync(session, message.SampleBarcodes, fileId: null).ConfigureAwait(false);
        var doubted = await QualityEvaluation.DoubtsAsync(session, [.. beside.Except(controlled)]).ConfigureAwait(false);
        return [.. message.SampleBarcodes.Union(judged).Union(doubted)];
    }
}
