namespace LabPipeline.Hosting.Bus;

/// <summary>The bus from one start to one stop; a line that no longer answers is given up and followed by a new one.</summary>
public interface IBusLine : IDisposable
{
    /// <summary>Why the broker takes no messages for now, although it answers; null when it does.</summary>
    string? Blocked { get; }

    Task StartAsync(CancellationToken cancellationToken);

    /// <summary>Ends when the broker has the message safely.</summary>
    Task PublishAsync(object message, Type type, Guid messageId, CancellationToken cancellationToken);

    /// <summary>Somebody noticed that the line does not answer.</summary>
    void Doubt(string reason);

    /// <summary>Returns the reason when the line is to be given up.</summary>
    Task<string> WatchAsync(CancellationToken cancellationToken);

    /// <summary>Lets go of everything within bounded time.</summary>
    /// <param name="gracefully">Whether messages in hand may be finished first.</param>
    Task StopAsync(bool gracefully);
}
