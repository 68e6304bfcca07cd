using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace LabPipeline.Intake;

/// <summary>Watches the drop folder of one kind of instrument and takes what is complete.</summary>
public sealed class IntakeWorker : BackgroundService
{
    private readonly LabWarehouse _warehouse;
    private readonly RelaySignal _relay;
    private readonly TimeProvider _time;
    private readonly IntakeOptions _options;
    private readonly ILogger<IntakeWorker> _log;
    private readonly DropFolder _folder;
    private readonly ProfileShelf _profiles;
    private readonly FolderReview _review;
    private readonly HeldBook _held;
    private readonly FileIntake _intake;
    private readonly Departures _departures;
    private readonly IntakePulse _pulse;
    private readonly FolderWatcher _watcher = new();

    public IntakeWorker(
        IntakeKind kind,
        LabWarehouse warehouse,
        RelaySignal relay,
        TimeProvider time,
        IOptions<LabOptions> lab,
        IOptions<IntakeOptions> options,
        ILogger<IntakeWorker> log)
    {
        _warehouse = warehouse;
        _relay = relay;
        _time = time;
        _options = options.Value;
        _log = log;
        _folder = new DropFolder(kind.FolderName, Path.Combine(lab.Value.DropFolder, kind.FolderName));
        _profiles = new ProfileShelf(Path.Combine(lab.Value.ProfileFolder, kind.FolderName));
        _review = new FolderReview(new FolderMemory(time), _profiles);
        _held = new HeldBook(warehouse, kind.FolderName);
        _intake = new FileIntake(warehouse, new FileArchive(lab.Value.ArchiveFolder), time);
        _departures = new Departures(_folder, log);
        _pulse = new IntakePulse(warehouse, kind.ServiceName, LeaseHolder.ThisProcess, time);
    }

    /// <summary>Says "not caught up" before any other service may draw conclusions from what is missing.</summary>
    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        _folder.Ensure();
        await ForgetOldArrivalsAsync(cancellationToken).ConfigureAwait(false);
        await _pulse.BeatAsync(0, caughtUp: false, cancellationToken).ConfigureAwait(false);
        await base.StartAsync(cancellationToken).ConfigureAwait(false);
    }

    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken).ConfigureAwait(false);
        await _pulse.GiveBackAsync(_log).ConfigureAwait(false);
    }

    public override void Dispose()
    {
        _watcher.Dispose();
        base.Dispose();
    }

    /// <summary>One look at the folder: takes everything that is complete.</summary>
    public async Task LookAsync(CancellationToken cancellationToken)
    {
        if (!await _pulse.HoldLeaseAsync(cancellationToken).ConfigureAwait(false))
        {
            return;
        }

        if (!Directory.Exists(_folder.Path))
        {
            await ReportMissingFolderAsync(cancellationToken).ConfigureAwait(false);
            return;
        }

        _folder.Ensure();
        _watcher.Arm(_folder.Path);
        _profiles.Refresh();
        var findings = _review.Sort(FolderScan.List(_folder));
        var unreadable = await TakeAllAsync(findings.Ready, cancellationToken).ConfigureAwait(false);
        await _held.UpdateAsync([.. findings.Held, .. unreadable], _time.GetUtcNow(), cancellationToken).ConfigureAwait(false);
        var caughtUp = findings.Ready.Count == 0 && findings.Settling == 0;
        await _pulse.BeatAsync(findings.Settling, caughtUp, cancellationToken).ConfigureAwait(false);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await LookAsync(stoppingToken).ConfigureAwait(false);
            }
            catch (Exception exception) when (!stoppingToken.IsCancellationRequested)
            {
                _log.LogError(exception, "FolderLookFailed {Folder}", _folder.Kind);
            }

            await _watcher.WaitAsync(_options.ScanInterval, stoppingToken).ConfigureAwait(false);
        }
    }

    private async Task<IReadOnlyList<HeldEntry>> TakeAllAsync(IReadOnlyList<ReadyFile> ready, CancellationToken cancellationToken)
    {
        var unreadable = new List<HeldEntry>();
        var waiting = ready.Count;
        var batches = Batches.Split(ready, _options.FilesPerCommit, _options.BytesPerCommit);
        try
        {
            await foreach (var result in _intake.TakeAsync(_folder, batches, session => NoteAsync(session, waiting), cancellationToken).ConfigureAwait(false))
            {
                _departures.Forget();
                unreadable.AddRange(result.Unreadable);
                waiting -= result.Files;
                if (waiting == 0)
                {
                    // While files wait the relay looks by itself, every other second: evaluation woken by each commit would compete with the next.
                    _relay.Wake();
                }

                await _departures.BeginAsync(result.Taken).ConfigureAwait(false);
                await _pulse.HoldLeaseAsync(cancellationToken).ConfigureAwait(false);
            }
        }
        finally
        {
            await _departures.EndAsync().ConfigureAwait(false);
        }

        if (!_departures.AreNoted)
        {
            await _warehouse.WriteAsync(session => NoteAsync(session, waiting), CancellationToken.None).ConfigureAwait(false);
            _departures.Forget();
        }

        return unreadable;
    }

    private async Task NoteAsync(WarehouseSession session, int waiting)
    {
        await _departures.NoteAsync(session).ConfigureAwait(false);
        await _pulse.BeatAsync(session, waiting, caughtUp: false).ConfigureAwait(false);
    }

    /// <summary>Arrivals whose original was moved just before a crash: the same name later is a new arrival.</summary>
    private Task ForgetOldArrivalsAsync(CancellationToken cancellationToken) => _warehouse.WriteAsync(
        async session =>
        {
            var open = await FileLedgerStore.ListOpenArrivalsAsync(session, _folder.Kind).ConfigureAwait(false);
            var gone = open.Where(arrival => !File.Exists(Path.Combine(_folder.Path, arrival.Name))).Select(arrival => arrival.ArrivalId).ToList();
            if (gone.Count > 0)
            {
                await FileLedgerStore.MarkPutAwayAsync(session, gone).ConfigureAwait(false);
            }
        },
        cancellationToken);

    private async Task ReportMissingFolderAsync(CancellationToken cancellationToken)
    {
        _log.LogWarning("FolderMissing {Folder}", _folder.Kind);
        var place = new SeenFile("(the folder itself)", _folder.Path, 0, default, SeenKind.Directory);
        var missing = new HeldEntry(
            place, "folder.missing", $"The drop folder for {_folder.Kind} files is gone; instruments cannot deliver. Mount or create it again.");
        await _held.UpdateAsync([missing], _time.GetUtcNow(), cancellationToken).ConfigureAwait(false);
    }
}
