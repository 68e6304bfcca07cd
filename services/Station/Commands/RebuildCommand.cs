using System.ComponentModel;
using System.Data.Common;
using System.Globalization;
using LabPipeline.Intake.Keeping;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Data.Sqlite;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Makes a damaged or old warehouse whole: a backup, and whatever the archive holds beyond it.</summary>
internal sealed class RebuildCommand(IAnsiConsole console) : AsyncCommand<RebuildCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var lab = settings.Lab;
        var now = TimeProvider.System.GetUtcNow();
        if (File.Exists(lab.WarehouseFile))
        {
            await AssertNobodyRunsAsync(settings, now, cancellationToken);
            console.MarkupLineInterpolated($"The warehouse as it was lies in {SetAside(lab.WarehouseFile, now)}.");
        }

        var backup = settings.Empty ? null : settings.From ?? new BackupShelf(lab.BackupFolder).Newest();
        if (backup is not null)
        {
            File.Copy(backup, lab.WarehouseFile);
        }

        using var warehouse = await StationWarehouse.CreateAsync(lab, cancellationToken);
        var (missing, remembered) = await new ArchiveReplay(warehouse, lab.ArchiveFolder, TimeProvider.System).RunAsync(cancellationToken);
        await warehouse.WriteAsync(
            session => ChangeLogStore.AddAsync(session, new Change { At = now, Who = settings.By, What = "warehouse rebuilt", Subject = WarehouseAudits.Subject, Why = settings.Why }),
            cancellationToken);
        console.MarkupLineInterpolated($"Started from {backup ?? "nothing"}; {missing} of the {remembered} arrivals in the archive were missing and are stored again.");
        console.MarkupLine("What people decided after that backup (plans, corrections, settled alerts) must be entered again. 'station run' judges the readings.");
        return ExitCode.Done;
    }

    private static async Task AssertNobodyRunsAsync(Settings settings, DateTimeOffset now, CancellationToken cancellationToken)
    {
        try
        {
            using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
            var holders = await warehouse.ReadAsync(session => LeaseStore.ListHoldersAsync(session, now), cancellationToken);
            if (holders.FirstOrDefault(holder => !LeaseHolder.HasEnded(holder)) is { } holder)
            {
                throw new StationException(ExitCode.Failed, $"Process {holder} works on this warehouse; stop every service first. Nothing was changed.");
            }
        }
        catch (DbException)
        {
            // Too damaged to ask; that is what rebuilding is for.
        }
    }

    private static string SetAside(string warehouse, DateTimeOffset now)
    {
        SqliteConnection.ClearAllPools();
        var aside = string.Create(CultureInfo.InvariantCulture, $"{warehouse}.set-aside-{now.UtcDateTime:yyyyMMddTHHmmssfff}Z");
        foreach (var ending in new[] { "-wal", "-shm", "" })
        {
            if (File.Exists(warehouse + ending))
            {
                File.Move(warehouse + ending, aside + ending);
            }
        }

        return aside;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : SignedSettings
    {
        [CommandOption("--from <FILE>")]
        [Description("The backup to start from; the newest one when left out.")]
        public string? From { get; init; }

        [CommandOption("--empty")]
        [Description("Start from no backup: facts come from the archive, plans and corrections must be entered again.")]
        public bool Empty { get; init; }

        public override ValidationResult Validate() =>
            Empty && From is not null ? ValidationResult.Error("--from and --empty exclude each other.")
            : From is not null && !File.Exists(From) ? ValidationResult.Error($"No file {From}; expected a backup.")
            : base.Validate();
    }
}
