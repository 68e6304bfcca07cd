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
        await evaluation.SamplesAsync(session, message.SampleBarcodes, now).ConfigureAwait(false);
        var touched = await RunEvidenceStore.ListWeighingRunsAsync(session, message.SampleBarcodes, fileId: null).ConfigureAwait(false);
        var runAlerts = await AlertStore.ListOpenByKindAsync(session, RunEvidence.Kind).ConfigureAwait(false);
        var told = await RunEvidenceStore.FindRunsAsync(session, runAlerts.Select(alert => alert.Scope)).ConfigureAwait(false);
        await evaluation.RunsAsync(session, [.. touched.Union(told)], now).ConfigureAwait(false);
        var fileAlerts = await AlertStore.ListOpenByKindAsync(session, FileKind).ConfigureAwait(false);
        var files = await FileEvidenceStore.FindAsync(session, [.. fileAlerts.Select(alert => alert.Scope[FileKind.Length..]).Distinct()]).ConfigureAwait(false);
        await evaluation.FilesAsync(session, files, now).ConfigureAwait(false);
    }
}
