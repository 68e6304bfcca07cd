using LabPipeline.Hosting;
using LabPipeline.Intake.Keeping;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Data.Sqlite;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>Backup, audit and rebuild as a person meets them at the command line.</summary>
public sealed class KeepingCommandsTests : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private LabOptions Lab => new() { DataFolder = _folder.Path };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Rebuild_AfterABackup_StartsFromItAndSetsTheDamagedOneAside()
    {
        (await StationWarehouse.CreateAsync(Lab, Stop)).Dispose();
        Assert.Equal(ExitCode.Done, (await RunAsync("backup")).ExitCode);
        SqliteConnection.ClearAllPools();
        await File.WriteAllTextAsync(Lab.WarehouseFile, "no database at all", Stop);

        var (exitCode, output, errors) = await RunAsync("rebuild", "--by", "Ada", "--why", "disk trouble");

        Assert.True(exitCode == ExitCode.Done, errors);
        Assert.Contains(new BackupShelf(Lab.BackupFolder).Newest()!, output.ReplaceLineEndings(""), StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(_folder.Path, "warehouse.db.set-aside-*"));
        using var warehouse = await StationWarehouse.OpenAsync(Lab, Stop);
        var change = Assert.Single(await warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, WarehouseAudits.Subject), Stop));
        Assert.Equal(("Ada", "warehouse rebuilt", "disk trouble"), (change.Who, change.What, change.Why));
    }

    [Fact]
    public async Task Rebuild_WhileAServiceRuns_ChangesNothing()
    {
        using (var warehouse = await StationWarehouse.CreateAsync(Lab, Stop))
        {
            var now = DateTimeOffset.UtcNow;
            await warehouse.WriteAsync(session => LeaseStore.TryHoldAsync(session, "intake-sugar", LeaseHolder.ThisProcess, now, now.AddMinutes(1)), Stop);
        }

        var (exitCode, _, errors) = await RunAsync("rebuild", "--empty", "--by", "Ada", "--why", "to see");

        Assert.Equal(ExitCode.Failed, exitCode);
        Assert.Contains("stop every service first", errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folder.Path, "warehouse.db.set-aside-*"));
    }

    [Fact]
    public async Task Audit_OfASoundWarehouse_SaysSoAndOfADamagedOneEndsWithFaults()
    {
        (await StationWarehouse.CreateAsync(Lab, Stop)).Dispose();
        var (sound, output, _) = await RunAsync("audit");
        using (var warehouse = await StationWarehouse.OpenAsync(Lab, Stop))
        {
            await warehouse.WriteAsync(
                session => Dapper.SqlMapper.ExecuteAsync(
                    session.Connection,
                    "insert into source_file (sha256, kind, name, bytes, archived_as, taken_at, state, row_count, new_count, repeated_count, conflicting_count, parked_count) values ('00', 'sugar', 'lost.csv', 1, '2026-01/00', '2026-01-14T08:00:00.000Z', 'stored', 1, 1, 0, 0, 0)",
                    transaction: session.Transaction),
                Stop);
        }

        var (damaged, faults, _) = await RunAsync("audit");

        Assert.Equal(ExitCode.Done, sound);
        Assert.Contains("0 faults", output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, damaged);
        Assert.Contains("lost.csv", faults, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    private async Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments)
    {
        using var console = new TestConsole();
        console.Profile.Width = 300;
        using var errors = new StringWriter();
        var exitCode = await StationApp.RunAsync([.. arguments, "--data", _folder.Path], console, errors);
        return (exitCode, console.Output, errors.ToString());
    }
}
