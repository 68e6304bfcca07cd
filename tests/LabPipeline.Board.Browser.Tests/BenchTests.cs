using LabPipeline.Board.People;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>Bench sheets from the tablet to the reading, with and without a connection.</summary>
[Collection(BrowserTests.Name)]
public sealed class BenchTests(DemoBoard board)
{
    private const int TenMinutes = 10 * 60 * 1000;

    // Intake waits two quiet seconds by the sheet's profile, then reads; the rest is a slow machine's time.
    private static readonly LocatorAssertionsToContainTextOptions Patient = new() { Timeout = 30_000 };

    [Fact]
    public async Task PeelSheet_WhenSent_BecomesAReadingWithFileAndLine()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var sample = await AnySampleAsync(1);
        var page = await board.OpenAsync(RoleNames.Bench, "/bench");

        await page.Locator("#peel-sample").FocusAsync();
        await page.Keyboard.TypeAsync(sample.ToLowerInvariant());
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Radio, new() { Name = "95 %" }).CheckAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#sheet-peel tbody")).ToContainTextAsync(sample);
        await page.Locator("#sheet-peel .send").ClickAsync();

        await Expect(page.Locator("#bench-state")).ToContainTextAsync("Sent as peel-score_");
        await page.GotoAsync("/sample?barcode=" + sample);
        await Expect(page.Locator(".readings")).ToContainTextAsync("some.bench", Patient);
        Assert.Equal([95m], await board.QueryAsync<decimal>("select value from reading where barcode = @sample and operator = 'some.bench'", new { sample }));
    }

    [Fact]
    public async Task Sheet_WhenTheConnectionIsLostForTenMinutes_KeepsEveryKeystrokeAndIsSentOnce()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var (first, second) = (await AnySampleAsync(2), await AnySampleAsync(3));
        var page = await board.OpenAsync(RoleNames.Bench);
        await page.Clock.InstallAsync();
        await page.GotoAsync("/bench");
        await page.GetByRole(AriaRole.Button, new() { Name = "Chip defects" }).ClickAsync();

        await page.Context.SetOfflineAsync(true);
        await ScoreAsync(page, first, "4");
        await page.Clock.FastForwardAsync(TenMinutes);
        await page.Locator("#chips-sample").FillAsync("");
        await page.Locator("#chips-tuber").FillAsync("2");
        await ScoreAsync(page, second, "1");
        await page.Locator("#sheet-chips .send").ClickAsync();
        await page.Locator("#chips-sample").FillAsync(first);
        await Expect(page.Locator("#bench-state")).ToContainTextAsync("1 sheets wait");

        // What stands in the browser survives its page; what was half typed as well.
        await page.RouteAsync("**/bench/token", route => route.AbortAsync());
        await page.Context.SetOfflineAsync(false);
        await page.ReloadAsync();
        await Expect(page.Locator("#chips-sample")).ToHaveValueAsync(first);
        await Expect(page.Locator("#bench-state")).ToContainTextAsync("1 sheets wait");
        await page.UnrouteAsync("**/bench/token");
        await page.Clock.FastForwardAsync(TenMinutes);

        await Expect(page.Locator("#bench-state")).Not.ToContainTextAsync("wait");
        Assert.Single(await board.QueryAsync<string>("select file_name from board_entry where sheet = 'chips'"));
    }

    [Fact]
    public async Task Answer_WhenLostOnItsWay_DoesNotDoubleTheSheet()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Bench);
        await page.Clock.InstallAsync();
        await page.GotoAsync("/bench");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fry batches" }).ClickAsync();
        var lost = 0;
        await page.RouteAsync("**/bench/entries", async route =>
        {
            var answer = await route.FetchAsync();
            if (lost++ == 0 && answer.Ok)
            {
                await route.AbortAsync();
                return;
            }

            await route.FulfillAsync(new() { Response = answer });
        });

        await FryAsync(page, "B7");
        await Expect(page.Locator("#bench-state")).ToContainTextAsync("1 sheets wait");
        await page.Clock.FastForwardAsync(TenMinutes);

        await Expect(page.Locator("#bench-state")).Not.ToContainTextAsync("wait");
        Assert.True(lost >= 2);
        Assert.Single(await board.QueryAsync<string>("select file_name from board_entry where sheet = 'fry'"));
    }

    [Fact]
    public async Task Sheet_ThatTheProfileRefuses_ComesBackWithTheReason()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Bench, "/bench");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fry batches" }).ClickAsync();
        await FryAsync(page, "B;8");

        await Expect(page.Locator("#bench-outbox")).ToContainTextAsync("Refused:");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back to mend" }).ClickAsync();
        await Expect(page.Locator("#bench-outbox li")).ToHaveCountAsync(0);
        await Expect(page.Locator("#sheet-fry tbody tr")).ToHaveCountAsync(1);
    }

    private static async Task FryAsync(IPage page, string batch)
    {
        await page.Locator("#fry-batch").FillAsync(batch);
        foreach (var (column, value) in new[] { ("oil_start_f", "360"), ("oil_lowest_f", "342"), ("oil_after_f", "355"), ("time_s", "130") })
        {
            await page.Locator("#fry-" + column).FillAsync(value);
        }

        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#sheet-fry .send").ClickAsync();
    }

    private static async Task ScoreAsync(IPage page, string sample, string score)
    {
        await page.Locator("#chips-sample").FillAsync(sample);
        await page.GetByRole(AriaRole.Radio, new() { Name = score, Exact = true }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Note", Exact = true }).ClickAsync();
        await Expect(page.Locator("#sheet-chips tbody")).ToContainTextAsync(sample);
    }

    private async Task<string> AnySampleAsync(int number) =>
        (await board.QueryAsync<string>("select barcode from sample order by barcode limit 1 offset @number", new { number })).Single();
}
