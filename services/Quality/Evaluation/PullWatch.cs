using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Looks once a minute for what no message tells: pulls that nobody measured, windows that closed, files that stay in a folder.</summary>
/// <remarks>
/// Pulls are evaluated when their local date moved on or their readings changed, so a look costs little however much the warehouse holds.
/// Only the holder of the lease looks; a new process starts by evaluating every pull that is due.
/// </remarks>
public sealed class PullWatch(
    LabWarehouse warehouse, QualityEvaluation evaluation, RelaySignal relay, TimeProvider time, ILogger<PullWatch> log) : BackgroundService
{
    public const string Lease = "pull-watch";

    /// <summary>How often it looks.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromMinutes(1);

    // Three looks: one may be late, a dead holder is replaced soon.
    private static readonly TimeSpan LeaseTime = 3 * Every;

    private static readonly IReadOnlyList<(string Type, string Consumer)> Consumers =
    [
        (typeof(ReadingsRecorded).FullName!, ReadingsRecordedConsumer.Endpoint),
        (typeof(ReadingsChanged).FullName!, ReadingsChangedConsumer.Endpoint),
        (typeof(TrialPlanLoaded).FullName!, TrialPlanLoadedConsumer.Endpoint),
        (typeof(FileRefused).FullName!, FileRefusedConsumer.Endpoint),
    ];

    private readonly string _holder = LeaseHolder.ThisProcess;
    private Memory _memory = new();

    /// <summary>Looks once.</summary>
    public async Task<WatchLook> LookAsync(CancellationToken cancellationToken)
    {
        // A failed transaction must not leave pulls marked as evaluated.
        var memory = _memory.Copy();
        var look = await warehouse.WriteAsync(session => LookAsync(session, memory), cancellationToken).ConfigureAwait(false);
        if (look.Skipped is { } reason)
        {
            log.LogInformation("PullWatchSkipped {Reason}", reason);
        }
        else
        {
            _memory = memory;
        }

        relay.Wake();
        return look;
    }

    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken).ConfigureAwait(false);
        await LeaseEnd.GiveBackAsync(warehouse, Lease, _holder, log).ConfigureAwait(false);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, time);
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false))
        {
            try
            {
                await LookAsync(stoppingToken).ConfigureAwait(false);
            }
            catch (Exception exception) when (exception is not OperationCanceledException || !stoppingToken.IsCancellationRequested)
            {
                log.LogError(exception, "PullWatchFailed");
            }
        }
    }

    private async Task<WatchLook> LookAsync(WarehouseSession session, Memory memory)
    {
        var now = time.GetUtcNow();
        if (!await LeaseStore.TryHoldAsync(session, Lease, _holder, now, now + LeaseTime).ConfigureAwait(false))
        {
            return new WatchLook("another process holds the lease", 0);
        }

        await evaluation.HeldFilesAsync(session, now).ConfigureAwait(false);
        await evaluation.ParkedMessagesAsync(session, now).ConfigureAwait(false);
        await evaluation.AuditAsync(session, now).ConfigureAwait(false);
        await evaluation.DeliveriesAsync(session, now).ConfigureAwait(false);
        if (await WhyNotReadyAsync(session).ConfigureAwait(false) is { } reason)
        {
            return new WatchLook(reason, 0);
        }

        var position = await PullJournal.FindLastAsync(session).ConfigureAwait(false);
        var (pulls, trials) = memory.Position is { } last
            ? await PullJournal.ListTouchedAsync(session, last).ConfigureAwait(false)
            : ([], new HashSet<string>());
        var touched = pulls.ToHashSet();
        var planned = await TrialStore.ListPullsAsync(session).ConfigureAwait(false);
        var due = PullCalendar.Due(planned, memory.LastDates, key => touched.Contains(key) || trials.Contains(key.TrialCode), now);
        memory.Position = position;
        await evaluation.PullsAsync(session, due, now).ConfigureAwait(false);
        return new WatchLook(null, due.Count);
    }

    private static async Task<string?> WhyNotReadyAsync(WarehouseSession session)
    {
        var unhandled = 0;
        foreach (var (type, consumer) in Consumers)
        {
            unhandled += await OutboxStore.CountUnhandledAsync(session, type, consumer).ConfigureAwait(false);
        }

        return WatchReadiness.WhyNot(await HeartbeatStore.ListAsync(session).ConfigureAwait(false), unhandled);
    }

    /// <summary>What the last look saw; forgetting it costs one look at everything.</summary>
    private sealed class Memory
    {
        public Dictionary<PullKey, DateOnly?> LastDates { get; private init; } = [];

        public long? Position { get; set; }

        public Memory Copy() => new() { LastDates = new(LastDates), Position = Position };
    }
}
