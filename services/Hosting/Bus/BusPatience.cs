namespace LabPipeline.Hosting.Bus;

/// <summary>How long the bus waits for what; a laboratory has no reason to change them, tests do.</summary>
public sealed record BusPatience
{
    /// <summary>How often a failing message is tried again before it is parked.</summary>
    public int Retries { get; init; } = 5;

    public TimeSpan FirstRetry { get; init; } = TimeSpan.FromMilliseconds(200);

    public TimeSpan LongestRetry { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Longest wait of a message that came back several times, so that those that came back with it are there to be drawn first.</summary>
    public TimeSpan Suspicion { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>Pause when a failing message cannot even be parked, because the warehouse does not answer.</summary>
    public TimeSpan WarehousePause { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>A blocked broker can hold a publish for as long as it likes; the outbox keeps the message meanwhile.</summary>
    public TimeSpan Publish { get; init; } = TimeSpan.FromSeconds(10);

    public TimeSpan Start { get; init; } = TimeSpan.FromSeconds(20);

    public TimeSpan Stop { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>How long services that stop wait for their last writes: shorter, so that of the handlers only one that does not end is left when the bus has stopped.</summary>
    public TimeSpan LastWrites { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>How often the canary flies and the queues are looked at.</summary>
    public TimeSpan LookEvery { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>How long the canary, or the broker's answer to a question, may take.</summary>
    public TimeSpan Answer { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>How long a queue may hold messages of which an idle consumer gets none.</summary>
    public TimeSpan Stall { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Longest pause before the bus is built again.</summary>
    public TimeSpan LongestRebuildPause { get; init; } = TimeSpan.FromSeconds(5);
}
