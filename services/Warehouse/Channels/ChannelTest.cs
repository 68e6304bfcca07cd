namespace LabPipeline.Warehouse.Channels;

/// <summary>Somebody asked whether a channel works, and what came of it.</summary>
public sealed record ChannelTest
{
    public int TestId { get; init; }

    public string Channel { get; init; } = "";

    public DateTimeOffset AskedAt { get; init; }

    public string AskedBy { get; init; } = "";

    /// <summary>One of <see cref="ChannelTestStates"/>.</summary>
    public string State { get; init; } = "";

    /// <summary>Null while it waits.</summary>
    public DateTimeOffset? EndedAt { get; init; }

    /// <summary>Why it failed; null otherwise.</summary>
    public string? Reason { get; init; }
}
