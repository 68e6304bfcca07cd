using LabPipeline.Board.People;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>The main task of each role, from signing in to its effect in the warehouse.</summary>
[Collection(BrowserTests.Name)]
public sealed class RoleTests(DemoBoard board)
{
    [Fact]
    public async Task Look_WhenReading_FollowsAnAlertToItsFileLineAndCanChangeNothing()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var sample = (await board.QueryAsync<string>("select barcode from qc_alert where rule_name = 'duplicate disagreement' and state = 'open' order by alert_id")).First();
        var page = await board.OpenAsync(RoleNames.Look, "/alerts?rule=duplicate%20disagreement");

        await page.GetByRole(AriaRole.Link, new() { NameRegex = new($"Sample {sample}: duplicate") }).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Img).First).ToHaveAccessibleNameAsync(new System.Text.RegularExpressions.Regex("extract 1 .*; extract 2 .*; limit"));
        await Expect(page.Locator("form[action$=seen], form[action$=settle]")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Link, new() { Name = "Follow sample " + sample }).ClickAsync();

        await Expect(page.Locator(".readings")).ToContainTextAsync("line");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Office" })).ToHaveCountAsync(0);
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Bench sheets" })).ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData(RoleNames.Look, "/bench")]
    [InlineData(RoleNames.Look, "/office")]
    [InlineData(RoleNames.Bench, "/office")]
    [InlineData(RoleNames.Bench, "/office/profiles")]
    [InlineData(RoleNames.Bench, "/office/limits")]
    [InlineData(RoleNames.Bench, "/office/channels")]
    [InlineData(RoleNames.Look, "/office/services")]
    [InlineData(RoleNames.Manage, "/office/people")]
    [InlineData(RoleNames.Manage, "/office/keys")]
    public async Task Page_ThatARoleMayNotSee_IsRefused(string role, string address)
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(role);

        var answer = await page.GotoAsync(address);

        Assert.Equal(403, answer!.Status);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Not for your role");
    }

    [Fact]
    public async Task Manage_WhenSettlingAnAlert_GivesAReasonThatStaysWithTheName()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var number = (await board.QueryAsync<int>("select alert_id from qc_alert where rule_name = 'peel below target' and state = 'open'")).First();
        var page = await board.OpenAsync(RoleNames.Manage, $"/alert/{number}");

        await page.GetByLabel("Reason").FillAsync("peeled again, <b>90 %</b>");
        await page.GetByRole(AriaRole.Button, new() { Name = "Settle" }).ClickAsync();

        await Expect(page.Locator(".said")).ToContainTextAsync("The alert is settled");
        await Expect(page.GetByText("some.manage: alert settled (peeled again, <b>90 %</b>)")).ToBeVisibleAsync();
        var state = await board.QueryAsync<string>("select state || ' ' || settled_by from qc_alert where alert_id = @number", new { number });
        Assert.Equal(["settled some.manage"], state);
    }

    [Fact]
    public async Task Manage_WhenAcceptingAReExport_ChoosesRowByRow()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var file = (await board.QueryAsync<int>("select file_id from source_file where conflicting_count > 0")).First();
        var before = (await board.QueryAsync<int>("select count(*) from reading where file_id = @file and standing = 1", new { file })).Single();
        Assert.True(before > 0);
        var page = await board.OpenAsync(RoleNames.Manage, $"/arrival/{file}");

        await page.GetByRole(AriaRole.Checkbox).First.CheckAsync();
        await page.Locator("#accept-why").FillAsync("the analyser was set up anew");
        await page.GetByRole(AriaRole.Button, new() { Name = "Accept the chosen values" }).ClickAsync();

        await Expect(page.Locator(".said")).ToContainTextAsync("The chosen values are in effect");
        Assert.Equal(before - 1, (await board.QueryAsync<int>("select count(*) from reading where file_id = @file and standing = 1", new { file })).Single());
    }

    [Fact]
    public async Task Administer_WhenMakingAPerson_LetsThemIn()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Administer, "/office/people");

        await page.Locator("#name").FillAsync("new.helper");
        await page.Locator("#role").SelectOptionAsync("bench");
        await page.Locator("#password").FillAsync("washed and weighed twice");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make", Exact = true }).ClickAsync();
        await Expect(page.Locator(".said")).ToContainTextAsync("The person is made");

        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.FillAsync("#name", "new.helper");
        await page.FillAsync("#password", "washed and weighed twice");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Bench sheets" })).ToBeVisibleAsync();
    }
}
