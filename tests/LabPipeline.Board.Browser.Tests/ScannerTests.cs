using LabPipeline.Board.People;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>A wedge scanner types fast and ends with Enter or Tab; nothing it can read is ever markup.</summary>
[Collection(BrowserTests.Name)]
public sealed class ScannerTests(DemoBoard board)
{
    private const string Sample = "25KN02003A";

    [Theory]
    [InlineData("Enter")]
    [InlineData("Tab")]
    public async Task Scan_HoweverItEnds_OpensTheTrailAndIsReadyForTheNext(string end)
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Look, "/sample");
        await Expect(page.Locator("#barcode")).ToBeFocusedAsync();

        await ScanAsync(page, end);

        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = Sample, Exact = true })).ToBeVisibleAsync();
        await Expect(page.Locator("#barcode")).ToBeFocusedAsync();
        await Expect(page.Locator("#barcode")).ToHaveValueAsync("");
    }

    [Fact]
    public async Task Tab_OfAPersonTyping_LeavesTheFieldAsOnEveryPage()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Look, "/sample");

        await page.Locator("#barcode").PressSequentiallyAsync(Sample, new() { Delay = 120 });
        await page.WaitForTimeoutAsync(120);
        await page.Keyboard.PressAsync("Tab");

        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Follow" })).ToBeFocusedAsync();
    }

    [Theory]
    [InlineData("<script>document.title='taken'</script>")]
    [InlineData("\"><img src=x onerror=document.title='taken'>")]
    public async Task Barcode_ThatIsMarkup_IsShownAsText(string hostile)
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Bench, "/sample");

        await page.Locator("#barcode").FillAsync(hostile);
        await page.Keyboard.PressAsync("Enter");

        await Expect(page.Locator(".notice")).ToContainTextAsync("Found");
        Assert.Equal("Sample trail", await page.TitleAsync());
        await page.GotoAsync("/bench");
        await page.Locator("#peel-sample").FillAsync(hostile);
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#sheet-peel .fault")).ToContainTextAsync("no sample barcode");
        Assert.Equal("Bench sheets", await page.TitleAsync());
    }

    /// <summary>Keys that carry the times a scanner would give them, ten milliseconds apart, however busy this machine is.</summary>
    private static async Task ScanAsync(IPage page, string end)
    {
        var keys = await page.Context.NewCDPSessionAsync(page);
        var at = DateTimeOffset.UtcNow.ToUnixTimeMilliseconds() / 1000.0;
        foreach (var letter in Sample)
        {
            await PressAsync(keys, letter.ToString(), letter, letter.ToString(), at += 0.01);
        }

        await (end == "Tab" ? PressAsync(keys, "Tab", 9, "", at + 0.01) : PressAsync(keys, "Enter", 13, "\r", at + 0.01));
    }

    private static async Task PressAsync(ICDPSession keys, string key, int code, string text, double at)
    {
        await keys.SendAsync("Input.dispatchKeyEvent", new() { ["type"] = "keyDown", ["key"] = key, ["windowsVirtualKeyCode"] = code, ["text"] = text, ["timestamp"] = at });
        await keys.SendAsync("Input.dispatchKeyEvent", new() { ["type"] = "keyUp", ["key"] = key, ["windowsVirtualKeyCode"] = code, ["timestamp"] = at });
    }
}
