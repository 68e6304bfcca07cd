using Dapper;
using LabPipeline.Board.Today;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Board.Tests.Today;

/// <summary>The bays of a pull and the view of its progress count by one rule: measured means as many readings in effect as the plan asks for.</summary>
public sealed class CountingTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(3, 1)]
    public async Task Sample_WithSomeOfItsReadings_IsCountedAlikeByBayAndByView(int readings, int measured)
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);
        for (var number = 1; number <= readings; number++)
        {
            await board.InsertAsync(
                "insert into reading values (@id, 1, @key, 1, 'P1A', 0.05, 0, '0.05', 'g/L', '1', @number, null, null, 'JR', null, null, 1, @id, 0)",
                new { id = 100 + number, key = $"k{number}", number });
        }

        // Set aside, superseded and contested readings are no readings in effect.
        await board.InsertAsync("insert into reading values (200, 1, 'x', 1, 'P1B', 0.05, 0, '0.05', 'g/L', '1', 1, null, null, 'JR', null, null, 1, 200, 3)");
        await board.InsertAsync("insert into reading values (201, 1, 'y', 1, 'P1B', 0.05, 0, '0.05', 'g/L', '1', 1, null, null, 'JR', null, null, 1, 201, 1)");
        var token = TestContext.Current.CancellationToken;

        var progress = (await board.Warehouse.ReadAsync(session => PullProgressStore.ListAsync(session, "NT26"), token)).Single(row => row.PullNo == 1);
        var bay = Assert.Single(BaySheet.Of(await board.Warehouse.ReadAsync(session => PullNeedStore.ListAsync(session, "NT26", 1), token)));

        Assert.Equal((measured, 2), (progress.SamplesMeasured, progress.SamplesPlanned));
        Assert.Equal(measured, bay.Whole);
        Assert.Equal(readings == 0 ? 2 : 1, bay.NotArrived);
    }

    /// <summary>The page of the day counts thousands of readings among millions; no row of the table may be read for it.</summary>
    [Fact]
    public async Task Readings_WhenCounted_AreCountedFromAnIndexAlone()
    {
        await using var board = await RunningBoard.StartAsync();

        foreach (var statement in new[] { SqlText.Load<PullProgressStore>("list-pull-progress"), SqlText.Load<PullNeedStore>("list-pull-gaps") })
        {
            var plan = await board.Warehouse.ReadAsync(
                session => session.Connection.QueryAsync("explain query plan " + statement.For(DialectName.Sqlite), new { trialCode = "NT26", pullNo = 1 }), TestContext.Current.CancellationToken);

            Assert.Contains(plan, step => ((string)step.detail).Contains("SEARCH r USING COVERING INDEX ix_reading_barcode", StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task Sample_ThatWasBegun_SaysHowFarItIs()
    {
        await using var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);
        await board.InsertAsync("insert into reading values (101, 1, 'k', 1, 'P1A', 0.05, 0, '0.05', 'g/L', '1', 1, null, null, 'JR', null, null, 1, 101, 0)");

        var page = PageText.Of(await board.PageAsync("/"));

        Assert.Contains("P1A glucose in extract (1 of 2)", page, StringComparison.Ordinal);
        Assert.Contains("P1B nothing has arrived", page, StringComparison.Ordinal);
    }
}
