namespace LabPipeline.Warehouse.Machinery;

/// <summary>Sign of life of a service, and whether it had nothing left to do when it last looked.</summary>
public sealed record Heartbeat
{
    public string Service { get; init; } = "";

    public DateTimeOffset StartedAt { get; init; }

    public DateTimeOffset BeatAt { get; init; }

    /// <summary>When the service, since its start, last had nothing waiting; null while it still catches up.</summary>
    public DateTimeOffset? CaughtUpAt { get; init; }

    public int Waiting { get; init; }
}
