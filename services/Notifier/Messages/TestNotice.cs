namespace LabPipeline.Notifier.Messages;

/// <summary>Somebody wants to see whether a channel works; nothing has happened.</summary>
public sealed record TestNotice : Notice
{
    public required string Channel { get; init; }

    public required string AskedBy { get; init; }
}
