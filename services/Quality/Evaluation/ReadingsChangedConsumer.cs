using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Readings changed their standing: evaluates their samples, and every run and file that has an open alert, since the message names neither.</summary>
public sealed class ReadingsChangedConsumer(LabWarehouse warehouse, RelaySignal relay, TimeProvider time, QualityEvaluation evaluation)
    : OnceConsumer<ReadingsChanged>(warehouse, relay, time)
{
    public const string Endpoint = "quality-readings-changed";

    private const string FileKind = "file:";

    protected override string ConsumerName => Endpoint;

    protected override async Task HandleAsync(ReadingsChanged message, WarehouseSession session, DateTimeOffset now)
    {
        var controlled = await ControlEvidenceStore.ListRunsAsync(session, message.SampleBarcodes, fileId: null).ConfigureAwait(false);
        var controlAlerts = await AlertStore.ListOpenByKindAsync(session, ControlEvidence.Kind).ConfigureAwait(false);
        var failed = await RunEvidenceStore.FindRunsAsync(session, controlAlerts.Select(alert => alert.Scope[ControlEvidence.Kind.Length..])).ConfigureAwait(false);
        var doubted = await evaluation.ControlsAsync(session, [.. controlled.Union(failed)], now).ConfigureAwait(false);
        await evaluation.SamplesAsync(session, [.. message.SampleBarcodes.Union(doubted)], now).ConfigureAwait(false);
        await evaluation.OrdersAsync(session, message.SampleBarcodes, now).ConfigureAwait(false);
        var touched = await RunEvidenceStore.ListWeighingRunsAsync(session, message.SampleBarcodes, fileId: null).ConfigureAwait(false);
        var runAlerts = await AlertStore.ListOpenByKindAsync(session, RunEvidence.Kind).ConfigureAwait(false);
        var told = await RunEvidenceStore.FindRunsAsync(session, runAlerts.Select(alert => alert.Scope[RunEvidence.Kind.Length..])).ConfigureAwait(false);
        await evaluation.RunsAsync(session, [.. touched.Union(told)], now).ConfigureAwait(false);
        var fileAlerts = await AlertStore.ListOpenByKindAsync(session, FileKind).ConfigureAwait(false);
        var files = await FileEvidenceStore.FindAsync(session, [.. fileAlerts.Select(alert => alert.Scope[FileKind.Length..]).Distinct()]).ConfigureAwait(false);
        await evaluation.FilesAsync(session, files, now).ConfigureAwait(false);
    }
}
