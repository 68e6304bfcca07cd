namespace LabPipeline.Warehouse.Channels;

/// <summary>A channel the notifier has in its settings.</summary>
public sealed record NoticeChannel
{
    public string Name { get; init; } = "";

    /// <summary>The levels it is told of, joined.</summary>
    public string Levels { get; init; } = "";

    /// <summary>When a notifier with these settings started.</summary>
    public DateTimeOffset NotedAt { get; init; }
}
