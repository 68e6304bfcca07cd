using LabPipeline.Hosting.Health;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Board.Office;

/// <summary>Whether the services behind the board live, and what waits between them.</summary>
/// <param name="Services">By their signs of life; empty when none has ever left one.</param>
/// <param name="Unpublished">Messages that wait to be published.</param>
/// <param name="OldestUnpublished">How long the oldest of them has waited; null when none does.</param>
/// <param name="Parked">Messages that could not be handled and wait for a person.</param>
/// <param name="Kept">The last line about keeping the warehouse, such as an audit; null when there is none.</param>
public sealed record PipelineState(IReadOnlyList<ServiceState> Services, int Unpublished, TimeSpan? OldestUnpublished, int Parked, Change? Kept)
{
    /// <summary>A message is published within a second; one that waits for so long is stuck.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(5);

    public static readonly PipelineState Nothing = new([], 0, null, 0, null);

    private static readonly SqlText ReadWaiting = SqlText.Load<PipelineState>("read-waiting-messages");

    /// <summary>What is not as it should be, a line each; none when all is well.</summary>
    public IEnumerable<string> Faults =>
    [
        .. Services.Count == 0 ? ["no service has left a sign of life"] : Array.Empty<string>(),
        .. Services.Where(service => service.IsSilent).Select(service => FormattableString.Invariant($"{service.Beat.Service} is silent for {service.Age.TotalSeconds:0} s")),
        .. OldestUnpublished > LongestWait ? [FormattableString.Invariant($"a message waits to be published for {OldestUnpublished.Value.TotalSeconds:0} s")] : Array.Empty<string>(),
        .. Parked > 0 ? [FormattableString.Invariant($"{Parked} messages are parked")] : Array.Empty<string>(),
    ];

    public static async Task<PipelineState> ReadAsync(WarehouseSession session, DateTimeOffset now)
    {
        var beats = await HeartbeatStore.ListAsync(session);
        var kept = await ChangeLogStore.ListAsync(session, WarehouseAudits.Subject);
        var waiting = await session.FirstOrDefaultAsync<WaitingMessages>(ReadWaiting);
        return new PipelineState(
            [.. beats.Select(beat => new ServiceState(beat, AgeOf(beat.BeatAt, now), HealthQuestion.WhyNot(beat.Service, beats, now) is not null))],
            waiting!.Unpublished,
            waiting.OldestAt is { } oldest ? AgeOf(oldest, now) : null,
            waiting.Parked,
            kept.Count == 0 ? null : kept[^1]);
    }

    /// <summary>Clocks of two computers may differ; nothing is younger than now.</summary>
    private static TimeSpan AgeOf(DateTimeOffset at, DateTimeOffset now) => now > at ? now - at : TimeSpan.Zero;

    private sealed class WaitingMessages
    {
        public int Unpublished { get; init; }

        public DateTimeOffset? OldestAt { get; init; }

        public int Parked { get; init; }
    }
}
