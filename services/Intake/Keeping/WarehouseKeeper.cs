using LabPipeline.Hosting;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace LabPipeline.Intake.Keeping;

/// <summary>Once a day, in one of the processes: a backup of the warehouse, and the audit that holds it against the archive.</summary>
public sealed class WarehouseKeeper(LabWarehouse warehouse, IOptions<LabOptions> lab, TimeProvider time, ILogger<WarehouseKeeper> log) : BackgroundService
{
    private const string Lease = "warehouse-keeper";
    private const string Who = "audit";

    private static readonly TimeSpan LookEvery = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan LeaseLength = TimeSpan.FromHours(2);

    private readonly DateTimeOffset _startedAt = time.GetUtcNow();

    /// <summary>Backs up and audits if that is due.</summary>
    /// <returns>What the audit found; null when it was not due.</returns>
    public async Task<AuditReport?> LookAsync(CancellationToken cancellationToken)
    {
        var now = time.GetUtcNow();
        if (!await warehouse.WriteAsync(session => IsOursAsync(session, now), cancellationToken).ConfigureAwait(false))
        {
            return null;
        }

        var backup = await new BackupShelf(lab.Value.BackupFolder).AddAsync(warehouse, now, cancellationToken).ConfigureAwait(false);
        var report = await new ArchiveAudit(warehouse, lab.Value.ArchiveFolder).RunAsync(cancellationToken).ConfigureAwait(false);
        foreach (var fault in report.Faults)
        {
            log.LogError("AuditFault {Fault}", fault);
        }

        log.LogInformation("AuditDone {Files} {Compared} {Faults} {Backup}", report.Files, report.Compared, report.Faults.Count, backup);
        await warehouse.WriteAsync(session => NoteAsync(session, report, now), CancellationToken.None).ConfigureAwait(false);
        return report;
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
                log.LogError(exception, "AuditNotDone");
            }

            await Task.Delay(LookEvery, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task<bool> IsOursAsync(WarehouseSession session, DateTimeOffset now)
    {
        var last = (await ChangeLogStore.ListAsync(session, WarehouseAudits.Subject).ConfigureAwait(false)).LastOrDefault(change => change.Who == Who)?.At;
        return KeepingSchedule.IsDue(_startedAt, last, now)
            && await LeaseStore.TryHoldAsync(session, Lease, LeaseHolder.ThisProcess, now, now + LeaseLength).ConfigureAwait(false);
    }

    private static async Task NoteAsync(WarehouseSession session, AuditReport report, DateTimeOffset now)
    {
        await report.NoteAsync(session, Who, now).ConfigureAwait(false);
        await LeaseStore.GiveBackAsync(session, Lease, LeaseHolder.ThisProcess).ConfigureAwait(false);
    }
}
