namespace LabPipeline.Notifier.Messages;

/// <summary>Something a channel is to tell.</summary>
public abstract record Notice
{
    /// <summary>The same at every attempt, so that whoever receives it twice can tell.</summary>
    public required string Id { get; init; }

    /// <summary>Since when it has been owed; the date of the message at every attempt.</summary>
    public required DateTimeOffset At { get; init; }
}
