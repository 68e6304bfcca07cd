using System.Diagnostics;
using System.Globalization;
using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Station;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Data.Sqlite;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>A handler that never ends, with the warehouse's write lock in its hand, does not keep its process from ending.</summary>
public sealed class HangingHandlerTests(ITestOutputHelper output)
{
    private const string Endpoint = "quality-file-refused";

    private const int SqliteBusy = 5;

    // 5 s for those who wait for the pen and 5 s for the bus; the rest is for a busy machine. A service manager kills after a minute.
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(40);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Service_WhenAHandlerHangsWithTheWriteLock_EndsWhenToldSaysWhichAndHandlesTheMessageLater()
    {
        using var folder = new ScratchFolder();
        var lab = new LabOptions { DataFolder = folder.Path };
        using var warehouse = await StationWarehouse.CreateAsync(lab, Stop);
        await warehouse.WriteAsync(session => session.Connection.ExecuteAsync(Hang, transaction: session.Transaction), Stop);
        await warehouse.WriteAsync(session => OutboxStore.AddAsync(session, new FileRefused(1, "a.csv", "number"), "1", DateTimeOffset.UtcNow), Stop);

        using (var service = ProductProcess.Start("Quality", $"--Lab:DataFolder={folder.Path}"))
        {
            await UntilAsync(() => IsHeldAsync(lab.WarehouseFile), "the handler hangs");
            var watch = Stopwatch.StartNew();
            var exitCode = await service.StopAsync(Stop).WaitAsync(LongestStop, Stop);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"ended after {watch.Elapsed.TotalSeconds:0.0} s"));
            Assert.Equal(0, exitCode);
        }

        Assert.Contains(Directory.GetFiles(lab.LogFolder).SelectMany(File.ReadLines), line => line.Contains("HandlerStillRuns", StringComparison.Ordinal) && line.Contains(Endpoint, StringComparison.Ordinal));
        Assert.Equal(0, await HandledAsync(warehouse));
        await warehouse.WriteAsync(session => session.Connection.ExecuteAsync("drop trigger hang; drop view endless;", transaction: session.Transaction), Stop);

        using var next = ProductProcess.Start("Quality", $"--Lab:DataFolder={folder.Path}");
        await UntilAsync(async () => await HandledAsync(warehouse) == 1, "the message handled");
        Assert.Equal(0, await next.StopAsync(Stop));
    }

    /// <summary>The first statement of every handler never returns.</summary>
    private const string Hang =
        """
        create view endless as with recursive number (n) as (select 1 union all select n + 1 from number) select count(*) as n from number;
        create trigger hang before insert on inbox begin select n from endless; end;
        """;

    private static Task<int> HandledAsync(LabWarehouse warehouse) => warehouse.ReadAsync(
        session => session.Connection.ExecuteScalarAsync<int>($"select count(*) from inbox where consumer = '{Endpoint}'"), Stop);

    /// <summary>Whether somebody has held the write lock for a second; the writes of a service take milliseconds.</summary>
    private static async Task<bool> IsHeldAsync(string file)
    {
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, DefaultTimeout = 1, Pooling = false }.ToString());
        await connection.OpenAsync(Stop);
        try
        {
            await connection.ExecuteAsync("begin immediate; rollback;");
            return false;
        }
        catch (SqliteException exception) when (exception.SqliteErrorCode == SqliteBusy)
        {
            return true;
        }
    }

    private static async Task UntilAsync(Func<Task<bool>> reached, string what)
    {
        var watch = Stopwatch.StartNew();
        while (!await reached())
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(120), $"Not reached within 120 s: {what}.");
            await Task.Delay(200, Stop);
        }
    }
}
