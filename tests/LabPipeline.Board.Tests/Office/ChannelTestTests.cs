using System.Net;
using LabPipeline.Board.People;

namespace LabPipeline.Board.Tests.Office;

public sealed class ChannelTestTests
{
    private const string Page = "/office/channels";

    [Theory]
    [InlineData(RoleNames.Look, HttpStatusCode.Forbidden)]
    [InlineData(RoleNames.Bench, HttpStatusCode.Forbidden)]
    [InlineData(RoleNames.Manage, HttpStatusCode.Forbidden)]
    [InlineData(RoleNames.Administer, HttpStatusCode.Redirect)]
    public async Task Test_ByRole_IsAskedForOrRefused(string role, HttpStatusCode expected)
    {
        await using var board = await StartAsync(role);

        using var answer = await board.PostAsync("/password", Page + "/test", ("channel", "email:lab"));

        Assert.Equal(expected, answer.StatusCode);
        Assert.Equal(expected == HttpStatusCode.Redirect ? [role] : [], await board.QueryAsync<string>("select asked_by from channel_test"));
        Assert.Equal(expected == HttpStatusCode.Redirect ? [role] : [], await board.QueryAsync<string>("select who from change_log where subject = 'channel:email:lab'"));
    }

    [Fact]
    public async Task Test_WithoutTheFormsToken_IsRefused()
    {
        await using var board = await StartAsync(RoleNames.Administer);
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("channel", "email:lab")]);

        using var answer = await board.Client.PostAsync(new Uri(Page + "/test", UriKind.Relative), form, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Empty(await board.QueryAsync<string>("select channel from channel_test"));
    }

    [Fact]
    public async Task Test_ThatWaits_IsNotAskedForTwiceAndSaysThatItWaits()
    {
        await using var board = await StartAsync(RoleNames.Administer);

        using var first = await board.PostAsync(Page, Page + "/test", ("channel", "email:lab"));
        using var second = await board.PostAsync(Page, Page + "/test", ("channel", "email:lab"));

        Assert.Equal(Page + "?said=test-asked", first.Headers.Location?.ToString());
        Assert.Single(await board.QueryAsync<string>("select channel from channel_test"));
        var page = PageText.Of(await board.PageAsync(Page));
        Assert.Contains("email:lab block, hold 0 0 0 0 ◐ test waits asked for 2026-01-14 16:30 by administer", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Test_OfAChannelTheNotifierDoesNotHave_IsNotAskedFor()
    {
        await using var board = await StartAsync(RoleNames.Administer);

        using var answer = await board.PostAsync(Page, Page + "/test", ("channel", "email:other"));

        Assert.Equal(Page + "?said=no-such-channel", answer.Headers.Location?.ToString());
        Assert.Empty(await board.QueryAsync<string>("select channel from channel_test"));
    }

    [Fact]
    public async Task Outcome_OfATest_IsShownWithItsReasonAsText()
    {
        await using var board = await StartAsync(RoleNames.Administer);
        await board.InsertAsync(
            """
            insert into channel_test (channel, asked_at, asked_by, state, ended_at, reason) values
                ('email:lab', '2026-01-14T10:00:00.000Z', 'JR', 'delivered', '2026-01-14T10:00:02.000Z', null),
                ('email:lab', '2026-01-14T11:00:00.000Z', 'JR', 'failed', '2026-01-14T11:00:02.000Z', '550 <script>no</script>')
            """);

        var page = await board.PageAsync(Page);

        Assert.Contains("■ test failed asked for 2026-01-14 12:00 by JR 550 <script>no</script>", PageText.Of(page), StringComparison.Ordinal);
        Assert.DoesNotContain("<script>no", page, StringComparison.Ordinal);
        Assert.DoesNotContain("test delivered", page, StringComparison.Ordinal);
    }

    private static async Task<RunningBoard> StartAsync(string role)
    {
        var board = await RunningBoard.StartForNobodyAsync();
        await board.SignInAsync(role);
        await board.InsertAsync("insert into notice_channel values ('email:lab', 'block, hold', '2026-01-14T08:00:00.000Z')");
        return board;
    }
}
