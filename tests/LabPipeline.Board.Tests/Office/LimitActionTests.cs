using System.Net;
using LabPipeline.Board.People;
using LabPipeline.Board.Tests.Controls;

namespace LabPipeline.Board.Tests.Office;

public sealed class LimitActionTests
{
    private const string Page = "/office/limits";

    private static readonly (string Name, string Value)[] Threshold =
        [("trial", "NT26"), ("quantity", "glucose"), ("kind", "high"), ("value", "0.25"), ("from", "2026-01-12"), ("why", "this clone browns <b>early</b>")];

    private static readonly (string Name, string Value)[] Target =
        [("instrument", "analyser A"), ("material", "CTRL"), ("quantity", "glucose_in_extract"), ("target", "0.05"), ("tolerance", "0.002"), ("from", ""), ("why", "new certificate")];

    private static readonly (string Name, string Value)[] Freeze =
        [("chart", "analyser A|CTRL|glucose_in_extract"), ("from", ""), ("why", "enough runs")];

    [Theory]
    [InlineData(RoleNames.Look)]
    [InlineData(RoleNames.Bench)]
    [InlineData(RoleNames.Manage)]
    public async Task Deciding_ByAnybodyButAnAdministrator_IsRefused(string role)
    {
        await using var board = await FilledAsync(role);

        foreach (var (address, fields) in new[] { ("threshold", Threshold), ("target", Target), ("freeze", Freeze) })
        {
            using var answer = await board.PostAsync("/password", $"{Page}/{address}", fields);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        Assert.Empty(await board.QueryAsync<string>("select why from change_log"));
        Assert.Empty(await board.QueryAsync<string>("select why from threshold"));
    }

    [Fact]
    public async Task Deciding_WithoutTheFormsToken_IsRefused()
    {
        await using var board = await FilledAsync(RoleNames.Administer);

        foreach (var (address, fields) in new[] { ("threshold", Threshold), ("target", Target), ("freeze", Freeze) })
        {
            using var form = new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
            using var answer = await board.Client.PostAsync(new Uri($"{Page}/{address}", UriKind.Relative), form, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }

        Assert.Empty(await board.QueryAsync<string>("select why from change_log"));
    }

    [Fact]
    public async Task Threshold_WhenSet_IsAVersionWithItsReasonInHistoryAndLog()
    {
        await using var board = await FilledAsync(RoleNames.Administer);

        using var first = await board.PostAsync(Page, Page + "/threshold", Threshold);
        using var second = await board.PostAsync(Page, Page + "/threshold", With(Threshold, "value", ""));

        Assert.Equal(Page + "?said=limit-set", first.Headers.Location?.ToString());
        Assert.Equal(Page + "?said=limit-set", second.Headers.Location?.ToString());
        Assert.Equal(["administer", "administer"], await board.QueryAsync<string>("select who from change_log where subject = 'threshold:NT26/glucose/high'"));
        var page = await board.PageAsync(Page);
        Assert.Contains("NT26 glucose highest value not told 1 0.25 2026-01-12 01:00 2026-01-14 16:30, administer this clone browns <b>early</b>", PageText.Of(page), StringComparison.Ordinal);
        Assert.Contains("NT26 glucose highest value not told 2 the default", PageText.Of(page), StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;early", page, StringComparison.Ordinal);

        // The trial's measured sample is judged anew.
        Assert.NotEmpty(await board.QueryAsync<string>("select body from outbox"));
    }

    [Theory]
    [InlineData("why", " ", "reason-missing")]
    [InlineData("value", "0,25", "not-a-number")]
    [InlineData("value", "1e-2", "not-a-number")]
    [InlineData("from", "12.01.2026", "not-a-day")]
    [InlineData("trial", "XX", "limit-not-known")]
    [InlineData("quantity", "oil_start", "limit-not-known")]
    [InlineData("quantity", "sweetness", "limit-not-known")]
    [InlineData("kind", "shift", "limit-not-known")]
    [InlineData("kind", "widest", "limit-not-known")]
    public async Task Threshold_ThatCannotBe_ChangesNothing(string field, string value, string said)
    {
        await using var board = await FilledAsync(RoleNames.Administer);

        using var answer = await board.PostAsync(Page, Page + "/threshold", With(Threshold, field, value));

        Assert.Equal($"{Page}?said={said}", answer.Headers.Location?.ToString());
        Assert.Empty(await board.QueryAsync<string>("select why from threshold"));
        Assert.Contains("class=\"notice said\"", await board.PageAsync(answer.Headers.Location!.ToString()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Threshold_LowAboveTheHighInForce_ChangesNothing()
    {
        await using var board = await FilledAsync(RoleNames.Administer);
        using var high = await board.PostAsync(Page, Page + "/threshold", Threshold);

        using var low = await board.PostAsync(Page, Page + "/threshold", With(With(Threshold, "kind", "low"), "value", "0.3"));

        Assert.Equal(Page + "?said=low-above-high", low.Headers.Location?.ToString());
        Assert.Equal(["high"], await board.QueryAsync<string>("select kind from threshold"));
    }

    [Fact]
    public async Task Target_WhenStated_IsTheNextVersionOfItsChart()
    {
        await using var board = await FilledAsync(RoleNames.Administer);

        using var answer = await board.PostAsync(Page, Page + "/target", Target);

        Assert.Equal(Page + "?said=limit-set", answer.Headers.Location?.ToString());
        Assert.Contains("analyser A, CTRL glucose in extract 2 0.05 0.048 to 0.052", PageText.Of(await board.PageAsync(Page)), StringComparison.Ordinal);
        Assert.Equal(["administer"], await board.QueryAsync<string>("select who from change_log where what = 'control target stated'"));
    }

    [Theory]
    [InlineData("tolerance", "0", "not-a-number")]
    [InlineData("tolerance", "-1", "not-a-number")]
    [InlineData("target", "", "not-a-number")]
    [InlineData("quantity", "dilution_factor", "limit-not-known")]
    [InlineData("instrument", " ", "limit-not-known")]
    [InlineData("why", "", "reason-missing")]
    public async Task Target_ThatCannotBe_ChangesNothing(string field, string value, string said)
    {
        await using var board = await FilledAsync(RoleNames.Administer);

        using var answer = await board.PostAsync(Page, Page + "/target", With(Target, field, value));

        Assert.Equal($"{Page}?said={said}", answer.Headers.Location?.ToString());
        Assert.Equal([1], await board.QueryAsync<int>("select version from control_limit"));
    }

    [Theory]
    [InlineData(2, "too-few-runs", 1)]
    [InlineData(20, "limit-set", 2)]
    public async Task Freezing_TakesTwentyRuns(int runs, string said, int versions)
    {
        await using var board = await FilledAsync(RoleNames.Administer);
        for (var run = 3; run <= runs; run++)
        {
            await board.InsertAsync(
                """
                insert into instrument_run values (@id, 'analyser A', @name);
                insert into control_check select @reading, @id, 'a', quantity_id, material, @value, 0, '0.05', 'g/L', null, null, @at, null, 1, @reading, 0 from control_check where reading_id = 701;
                """,
                new { id = 70 + run, name = $"R{run}", reading = 700 + run, value = 0.05m + (run % 3 * 0.001m), at = $"2026-01-{run + 5:00}T09:00:00.000Z" });
        }

        using var answer = await board.PostAsync(Page, Page + "/freeze", Freeze);

        Assert.Equal($"{Page}?said={said}", answer.Headers.Location?.ToString());
        Assert.Equal(versions, (await board.QueryAsync<int>("select version from control_limit")).Count());
    }

    [Fact]
    public async Task Forms_ForAManager_AreNotThere()
    {
        await using var board = await FilledAsync(RoleNames.Manage);

        var page = await board.PageAsync(Page);

        Assert.DoesNotContain("action=\"/office/limits", page, StringComparison.Ordinal);
        Assert.Contains("Deciding about limits needs the role administer.", page, StringComparison.Ordinal);
    }

    private static (string, string)[] With((string Name, string Value)[] fields, string name, string value) =>
        [.. fields.Select(field => field.Name == name ? (name, value) : field)];

    private static async Task<RunningBoard> FilledAsync(string role)
    {
        var board = await RunningBoard.StartForNobodyAsync();
        await board.SignInAsync(role);
        await Season.FillAsync(board);
        await ControlsPageTests.AddControlsAsync(board, "analyser A", "CTRL");
        return board;
    }
}
