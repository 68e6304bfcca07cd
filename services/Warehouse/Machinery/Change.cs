namespace LabPipeline.Warehouse.Machinery;

/// <summary>Who did what to which thing, when and why.</summary>
public sealed record Change
{
    public DateTimeOffset At { get; init; }

    public string Who { get; init; } = "";

    public string What { get; init; } = "";

    public string Subject { get; init; } = "";

    public string Why { get; init; } = "";
}
