using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Warehouse;
using MassTransit;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>Writes a row for each message it handles; the row is its effect.</summary>
internal sealed class NotingConsumer(LabWarehouse warehouse, RelaySignal relay, TimeProvider time, Handling handling)
    : OnceConsumer<FileRefused>(warehouse, relay, time)
{
    public const string Endpoint = "quality-file-refused";

    protected override string ConsumerName => Endpoint;

    public override Task Consume(ConsumeContext<FileRefused> context)
    {
        handling.OnArrival(context.Message);
        return base.Consume(context);
    }

    protected override async Task HandleAsync(FileRefused message, WarehouseSession session, DateTimeOffset now)
    {
        await session.Connection.ExecuteAsync("insert into effect (file_id) values (@FileId)", message, session.Transaction);
        await handling.HandleAsync(message);
    }
}
