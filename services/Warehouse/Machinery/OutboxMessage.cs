namespace LabPipeline.Warehouse.Machinery;

/// <summary>A message waiting in the warehouse to be published under a stable identifier.</summary>
public sealed record OutboxMessage
{
    public long Position { get; init; }

    public Guid MessageId { get; init; }

    public string Type { get; init; } = "";

    public string Body { get; init; } = "";
}
