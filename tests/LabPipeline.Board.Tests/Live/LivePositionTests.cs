using LabPipeline.Board.Live;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Board.Tests.Live;

public sealed class LivePositionTests
{
    [Theory]
    [InlineData("insert into outbox (message_id, type, body, created_at) values ('m', 't', '{}', '2026-01-14T15:00:00.000Z')")]
    [InlineData("insert into inbox values ('m', 'c', '2026-01-14T15:00:00.000Z')")]
    [InlineData("insert into change_log (at, who, what, subject, why) values ('2026-01-14T15:00:00.000Z', 'w', 'w', 's', 'y')")]
    [InlineData("insert into held_file values ('sugar', 'half.csv', 10, 'x', 'no line end', '2026-01-14T13:40:00.000Z', '2026-01-14T13:40:00.000Z')")]
    public async Task Position_AfterAnyChange_IsAnotherOneOnceHalfASecondHasPassed(string change)
    {
        await using var board = await RunningBoard.StartForNobodyAsync();
        var time = new FakeTimeProvider(RunningBoard.Now);
        using var position = new LivePosition(board.Warehouse, time);
        var before = await position.NowAsync(TestContext.Current.CancellationToken);

        await board.InsertAsync(change);
        var atOnce = await position.NowAsync(TestContext.Current.CancellationToken);
        time.Advance(TimeSpan.FromMilliseconds(500));
        var later = await position.NowAsync(TestContext.Current.CancellationToken);

        Assert.Equal(before, atOnce);
        Assert.NotEqual(before, later);
    }
}
