using LabPipeline.Hosting;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Intake;

/// <summary>The worker's lease on its folder and its sign of life, written only when they are due or something changed.</summary>
internal sealed class IntakePulse(LabWarehouse warehouse, string service, string holder, TimeProvider time)
{
    private static readonly TimeSpan LeaseLength = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan BeatEvery = TimeSpan.FromSeconds(10);

    private readonly DateTimeOffset _startedAt = time.GetUtcNow();
    private DateTimeOffset _lastBeat;
    private DateTimeOffset _lastRenewal;
    private int _lastWaiting = -1;
    private bool _lastCaughtUp;

    /// <returns>True while this worker is the one that may take files from the folder.</returns>
    public async Task<bool> HoldLeaseAsync(CancellationToken cancellationToken)
    {
        var now = time.GetUtcNow();
        if (now - _lastRenewal < BeatEvery && now >= _lastRenewal)
        {
            return true;
        }

        var held = await warehouse.WriteAsync(
            session => LeaseStore.TryHoldAsync(session, service, holder, now, now + LeaseLength), cancellationToken).ConfigureAwait(false);
        _lastRenewal = held ? now : default;
        return held;
    }

    public Task GiveBackAsync(ILogger log) => LeaseEnd.GiveBackAsync(warehouse, service, holder, log);

    public async Task BeatAsync(int waiting, bool caughtUp, CancellationToken cancellationToken)
    {
        var now = time.GetUtcNow();
        if (waiting != _lastWaiting || caughtUp != _lastCaughtUp || now - _lastBeat >= BeatEvery || now < _lastBeat)
        {
            await warehouse.WriteAsync(session => BeatAsync(session, waiting, caughtUp), cancellationToken).ConfigureAwait(false);
        }
    }

    /// <summary>The sign of life in a transaction that is written anyway: each of its own would wait for the disk and for other writers.</summary>
    public async Task BeatAsync(WarehouseSession session, int waiting, bool caughtUp)
    {
        var now = time.GetUtcNow();
        var beat = new Heartbeat
        {
            Service = service,
            StartedAt = _startedAt,
            BeatAt = now,
            CaughtUpAt = caughtUp ? now : null,
            Waiting = waiting,
        };
        await HeartbeatStore.BeatAsync(session, beat).ConfigureAwait(false);
        (_lastWaiting, _lastCaughtUp, _lastBeat) = (waiting, caughtUp, now);
    }
}
