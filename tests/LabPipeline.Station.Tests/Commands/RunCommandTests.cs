using System.Net;
using System.Net.Sockets;
using LabPipeline.Station.Commands;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Facts;
using Microsoft.Data.Sqlite;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

public sealed class RunCommandTests
{
    private const int BoardsPort = 5080;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Run_WhenTheBoardsAddressIsTaken_SaysSoAndReadsFiles()
    {
        using var folder = new ScratchFolder();
        using var other = Occupy();
        using var console = new TestConsole();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        using var warehouse = new LabWarehouse(new SqliteDialect(folder.File("warehouse.db")), TimeProvider.System);
        Directory.CreateDirectory(Path.Combine(folder.Path, "drop", "sugar"));
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "drop", "sugar", "notes.docx"), "x", Stop);

        var running = new RunCommand(console).ExecuteAsync(null!, new RunCommand.Settings { Data = folder.Path }, stop.Token);
        await Wait.UntilAsync(async () => running.IsCompleted || await IsListedAsync(warehouse));
        await stop.CancelAsync();

        // Its last services may still be starting, which are then cut short.
        await Task.WhenAny(running);

        Assert.Contains("The board stays closed: ", console.Output, StringComparison.Ordinal);
        Assert.Contains("Everything else runs.", console.Output, StringComparison.Ordinal);
        Assert.Equal("notes.docx", Assert.Single(await warehouse.ReadAsync(session => ArrivalListStore.ListAsync(session, null), Stop)).Name);
        SqliteConnection.ClearAllPools();
    }

    /// <summary>Whoever else has the address on this machine serves the test as well.</summary>
    private static TcpListener? Occupy()
    {
        var listener = new TcpListener(IPAddress.Loopback, BoardsPort);
        try
        {
            listener.Start();
            return listener;
        }
        catch (SocketException fault) when (fault.SocketErrorCode == SocketError.AddressAlreadyInUse)
        {
            listener.Dispose();
            return null;
        }
    }

    private static async Task<bool> IsListedAsync(LabWarehouse warehouse)
    {
        try
        {
            return (await warehouse.ReadAsync(session => ArrivalListStore.ListAsync(session, null), Stop)).Count > 0;
        }
        catch (SqliteException)
        {
            // Not migrated yet.
            return false;
        }
    }
}
