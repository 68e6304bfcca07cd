using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>A file was refused: raises it as a quality alert.</summary>
public sealed class FileRefusedConsumer(LabWarehouse warehouse, RelaySignal relay, TimeProvider time, QualityEvaluation evaluation)
    : OnceConsumer<FileRefused>(warehouse, relay, time)
{
    public const string Endpoint = "quality-file-refused";

    protected override string ConsumerName => Endpoint;

    protected override Task HandleAsync(FileRefused message, WarehouseSession session, DateTimeOffset now) =>
        evaluation.FilesAsync(session, [message.FileId], now);
}
