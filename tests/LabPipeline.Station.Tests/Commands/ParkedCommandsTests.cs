using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Data.Sqlite;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>Parked messages as a person meets them at the command line.</summary>
public sealed class ParkedCommandsTests : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Parked_WhenMessagesWait_ListsThemWithTheirReason()
    {
        await ParkAsync(1, typeof(FileRefused).FullName!);

        var (exitCode, output, _) = await RunAsync("parked");

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("quality-file-refused", output, StringComparison.Ordinal);
        Assert.Contains("FileRefused", output, StringComparison.Ordinal);
        Assert.Contains("SqliteException: disk full", output, StringComparison.Ordinal);
        Assert.Contains("1 messages wait", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Replay_OfAll_PutsThemBackIntoTheOutboxAndNotesWhoDidIt()
    {
        await ParkAsync(1, typeof(FileRefused).FullName!);
        await ParkAsync(2, typeof(FileRefused).FullName!);

        var (exitCode, output, _) = await RunAsync("replay", "--all", "--by", "Ada", "--why", "disk cleared");

        Assert.Equal(ExitCode.Done, exitCode);
        Assert.Contains("2 messages go out again", output, StringComparison.Ordinal);
        using var warehouse = await StationWarehouse.OpenAsync(new LabOptions { DataFolder = _folder.Path }, Stop);
        Assert.Equal(2, await warehouse.ReadAsync(OutboxStore.CountUnpublishedAsync, Stop));
        Assert.Empty(await warehouse.ReadAsync(ParkedMessageStore.ListAsync, Stop));
        var change = Assert.Single(await warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, ParkedMessageStore.SubjectOf(1)), Stop));
        Assert.Equal(("Ada", "message replayed", "disk cleared"), (change.Who, change.What, change.Why));
    }

    [Fact]
    public async Task Replay_OfAMessageOfNoKnownType_ChangesNothingAndSaysSo()
    {
        await ParkAsync(1, ParkedMessage.UnknownType);

        var (exitCode, _, errors) = await RunAsync("replay", "1", "--by", "Ada", "--why", "try");

        Assert.Equal(ExitCode.Faults, exitCode);
        Assert.Contains("Message 1 is of no type this program knows", errors, StringComparison.Ordinal);
        Assert.Contains("1 messages wait", (await RunAsync("parked")).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ExitCode.Failed, "Name the number of one message, or --all.", "replay", "--by", "Ada", "--why", "try")]
    [InlineData(ExitCode.NotFound, "No parked message has number 9", "replay", "9", "--by", "Ada", "--why", "try")]
    public async Task Replay_WhenNothingFits_SaysWhatIsExpected(int expected, string text, params string[] arguments)
    {
        await ParkAsync(1, typeof(FileRefused).FullName!);

        var (exitCode, output, errors) = await RunAsync(arguments);

        Assert.Equal(expected, exitCode);
        Assert.Contains(text, output + errors, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    private async Task ParkAsync(int number, string type)
    {
        using var warehouse = await StationWarehouse.CreateAsync(new LabOptions { DataFolder = _folder.Path }, Stop);
        var message = new ParkedMessage
        {
            MessageId = new Guid(number, 0, 0, new byte[8]),
            Endpoint = "quality-file-refused",
            Type = type,
            Body = "{}",
            Reason = "SqliteException: disk full",
            ParkedAt = DateTimeOffset.UtcNow,
        };
        await warehouse.WriteAsync(session => ParkedMessageStore.ParkAsync(session, message), Stop);
    }

    private async Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments)
    {
        using var console = new TestConsole();
        console.Profile.Width = 400;
        using var errors = new StringWriter();
        var exitCode = await StationApp.RunAsync([.. arguments, "--data", _folder.Path], console, errors);
        return (exitCode, console.Output, errors.ToString());
    }
}
