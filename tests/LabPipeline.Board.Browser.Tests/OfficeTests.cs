using LabPipeline.Board.People;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>Tasks of the office and papers, end to end over the running station, by the keyboard alone.</summary>
[Collection(BrowserTests.Name)]
public sealed class OfficeTests(DemoBoard board)
{
    // The notifier looks every two seconds and the page every one; the rest is for a machine that runs many tests at once.
    private const int Patience = 30_000;

    [Fact]
    public async Task Administer_WhenTestingAChannel_SeesItDeliveredWithoutReload()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Administer, "/office/channels");

        await page.GetByRole(AriaRole.Button, new() { Name = "Test alert-file" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");

        await Expect(page.Locator(".said")).ToContainTextAsync("A test is asked for");
        await Expect(page.GetByText("test delivered")).ToBeVisibleAsync(new() { Timeout = Patience });
        Assert.Contains("\"channel.test\"", await File.ReadAllTextAsync(Path.Combine(board.Folder, "alerts.jsonl"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(["some.administer", "notifier"], await board.QueryAsync<string>("select who from change_log where subject = 'channel:alert-file' order by change_id"));
    }

    [Fact]
    public async Task Administer_WhenSettingAThreshold_KeepsItWithTheReason()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Administer, "/office/limits");

        await page.Locator("summary", new() { HasText = "Set a threshold of a trial" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#threshold-quantity").SelectOptionAsync("glucose");
        await page.Locator("#threshold-kind").SelectOptionAsync("high");
        await page.Locator("#threshold-value").FillAsync("9.5");
        await page.Locator("#threshold-why").FillAsync("wide on purpose <script>alert(1)</script>");
        await page.Keyboard.PressAsync("Enter");

        await Expect(page.Locator(".said")).ToContainTextAsync("kept as the next version");
        await Expect(page.GetByText("wide on purpose <script>alert(1)</script>")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Manage_OnTheSameOfficePages_CanChangeNeitherLimitsNorTestChannels()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Manage, "/office/limits");

        await Expect(page.Locator("main form")).ToHaveCountAsync(0);
        await page.GotoAsync("/office/channels");
        await Expect(page.Locator("main form")).ToHaveCountAsync(0);
    }

    /// <summary>One page of paper a sheet of labels and nothing beside it: A4 is 210 mm x 297 mm (ISO 216), 595 x 842 points.</summary>
    [Fact]
    public async Task Labels_WhenPrintedFromThePage_AreSheetsOfA4AndNothingElse()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Look, "/papers?pull=6");
        await Expect(page.Locator(".paper")).ToHaveCountAsync(4);

        var pdf = System.Text.Encoding.Latin1.GetString(await page.PdfAsync(new() { PreferCSSPageSize = true }));

        var boxes = System.Text.RegularExpressions.Regex.Matches(pdf, @"/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]");
        Assert.Equal(4, boxes.Count);
        Assert.All(boxes, box =>
        {
            Assert.InRange(Points(box.Groups[1].Value), 594, 596);
            Assert.InRange(Points(box.Groups[2].Value), 841, 843);
        });
    }

    [Fact]
    public async Task ControlChart_OfARunThatFailed_SaysSoInWordsAndShape()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Look, "/controls?chart=" + Uri.EscapeDataString("sugar analyser A|CTRL-LOW|glucose_in_extract"));

        await Expect(page.Locator("tr[data-run='A260105-1']")).ToContainTextAsync("failed 3 of 3 controls");
        await Expect(page.Locator("#chart .legendtext", new() { HasText = "failed" })).ToBeVisibleAsync();
        await Expect(page.Locator("#chart .legendtext", new() { HasText = "upper limit" })).ToBeVisibleAsync();
    }

    private static double Points(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
