using System.Net;
using System.Text.Json;
using LabPipeline.Board.People;

namespace LabPipeline.Board.Tests.Office;

public sealed class ServicesTests
{
    [Fact]
    public async Task Services_ByTheirSignsOfLife_AreAliveOrSilent()
    {
        await using var board = await StartAsync(RoleNames.Manage);

        var page = PageText.Of(await board.PageAsync("/office/services"));

        Assert.Contains("notifier ■ silent 5 min ago 2026-01-14 15:00 still catching up 3", page, StringComparison.Ordinal);
        Assert.Contains("quality ✓ alive 10 s ago 2026-01-14 15:00 2026-01-14 16:29 0", page, StringComparison.Ordinal);
        Assert.Contains("To be published 1 messages, the oldest for 10 min", page, StringComparison.Ordinal);
        Assert.Contains("Parked 1 messages could not be handled", page, StringComparison.Ordinal);
        Assert.Contains("Last audit 2026-01-14 05:00, warehouse audited: 9 files, <b>no fault</b>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(RoleNames.Look)]
    [InlineData(RoleNames.Bench)]
    public async Task Services_ForWhoeverMayNotSeeTheOffice_AreRefused(string role)
    {
        await using var board = await StartAsync(role);

        using var answer = await board.GetAsync("/office/services");

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task Ready_WhenAServiceIsSilent_IsDegradedWithTheNumbersAndStillReady()
    {
        await using var board = await StartAsync(RoleNames.Manage);

        using var answer = await board.GetAsync("/health/ready");
        using var report = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("Degraded", report.RootElement.GetProperty("status").GetString());
        var pipeline = report.RootElement.GetProperty("checks").GetProperty("pipeline");
        Assert.Contains("notifier is silent for 300 s", pipeline.GetProperty("description").GetString(), StringComparison.Ordinal);
        Assert.Equal(300, pipeline.GetProperty("data").GetProperty("secondsSinceSignOfLife").GetProperty("notifier").GetDouble());
        Assert.Equal(600, pipeline.GetProperty("data").GetProperty("secondsOldestUnpublished").GetDouble());
        Assert.Equal(1, pipeline.GetProperty("data").GetProperty("parkedMessages").GetInt32());
    }

    private static async Task<RunningBoard> StartAsync(string role)
    {
        var board = await RunningBoard.StartForNobodyAsync();
        await board.SignInAsync(role);
        await board.InsertAsync(
            """
            insert into heartbeat values ('quality', '2026-01-14T14:00:00.000Z', '2026-01-14T15:29:50.000Z', '2026-01-14T15:29:50.000Z', 0),
                                         ('notifier', '2026-01-14T14:00:00.000Z', '2026-01-14T15:25:00.000Z', null, 3);
            insert into outbox (message_id, type, body, created_at) values ('00000000-0000-0000-0000-000000000001', 'x', '{}', '2026-01-14T15:20:00.000Z');
            insert into change_log (at, who, what, subject, why) values ('2026-01-14T04:00:00.000Z', 'audit', 'warehouse audited', 'warehouse', '9 files, <b>no fault</b>');
            insert into parked_message (message_id, endpoint, type, body, reason, times_parked, parked_at)
            values ('00000000-0000-0000-0000-000000000002', 'quality', 'x', '{}', 'no', 1, '2026-01-14T15:20:00.000Z');
            """);
        return board;
    }
}
