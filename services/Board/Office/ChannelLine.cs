namespace LabPipeline.Board.Office;

/// <summary>One channel by what became of its deliveries.</summary>
public sealed record ChannelLine
{
    public string Channel { get; init; } = "";

    /// <summary>The levels it is told of; null when the running notifier does not have it.</summary>
    public string? Levels { get; init; }

    public int Delivered { get; init; }

    public int Pending { get; init; }

    public int HeldBack { get; init; }

    public int Failed { get; init; }

    public DateTimeOffset? LastDeliveredAt { get; init; }

    /// <summary>Of a delivery that has not reached its channel; null when there is none.</summary>
    public string? LastError { get; init; }
}
