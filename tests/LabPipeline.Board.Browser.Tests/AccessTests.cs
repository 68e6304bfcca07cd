using System.Diagnostics;
using LabPipeline.Board.People;
using LabPipeline.Testing;
using Microsoft.Playwright;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>Every page under the rules of axe-core (WCAG 2.2 A and AA among them), under the board's own content policy, at two sizes.</summary>
[Collection(BrowserTests.Name)]
public sealed class AccessTests(DemoBoard board)
{
    private const string AxeVersion = "4.14.1";

    private static readonly string[] Pages =
    [
        "/", "/alerts", "/alert/2", "/arrivals", "/arrivals?state=refused", "/arrival/1?dry=1", "/sample?barcode=25KN02003A", "/season?quantity=glucose", "/season/grid", "/bench", "/office",
        "/office/people", "/office/keys", "/office/profiles", "/office/limits", "/office/channels", "/office/services",
        "/papers?pull=6", "/papers?pull=6&paper=halves", "/papers?pull=6&paper=pick-list", "/controls", "/password", "/nothing-here",
    ];

    [Theory]
    [InlineData(1366, 768)]
    [InlineData(1280, 800)]
    public async Task Page_UnderAxe_HasNoSeriousFindingAndTheBrowserRefusesNothing(int width, int height)
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        using var folder = new ScratchFolder();
        var axe = await FetchAxeAsync(folder.Path);
        Assert.SkipWhen(axe is null, axe is null ? Requirement.Waive(Requirement.Browser, "axe-core could not be fetched with npm") : "");
        var page = await board.OpenAsync(RoleNames.Administer);
        await page.SetViewportSizeAsync(width, height);
        var refused = new List<string>();
        page.Console += (_, message) => refused.AddRange(message.Type == "error" && message.Text.Contains("Content Security Policy", StringComparison.Ordinal) ? [message.Text] : Array.Empty<string>());
        page.PageError += (_, error) => refused.Add(error);

        foreach (var address in Pages)
        {
            await page.GotoAsync(address);
            await page.EvaluateAsync("document.querySelectorAll('details').forEach(fold => { fold.open = true; })");
            Assert.Equal("[]", await SeriousFindingsAsync(page, axe!));
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{address} is wider than {width}.");
        }

        Assert.Empty(refused);
    }

    /// <summary>The debugging connection runs scripts the page's own content policy would refuse.</summary>
    private static async Task<string> SeriousFindingsAsync(IPage page, string axe)
    {
        var tools = await page.Context.NewCDPSessionAsync(page);
        await tools.SendAsync("Runtime.evaluate", new() { ["expression"] = axe });
        var answer = await tools.SendAsync("Runtime.evaluate", new()
        {
            ["expression"] =
                "axe.run(document).then(r => JSON.stringify(r.violations.filter(v => ['serious', 'critical'].includes(v.impact)).map(v => [location.pathname, v.id, v.nodes.map(n => n.html)])))",
            ["awaitPromise"] = true,
        });
        return answer!.Value.GetProperty("result").GetProperty("value").GetString()!;
    }

    private static async Task<string?> FetchAxeAsync(string folder)
    {
        try
        {
            var start = new ProcessStartInfo("npm", ["install", "--no-save", "--no-audit", "--no-fund", "--prefix", folder, "axe-core@" + AxeVersion]) { RedirectStandardOutput = true, RedirectStandardError = true };
            using var npm = Process.Start(start)!;
            await npm.WaitForExitAsync(TestContext.Current.CancellationToken);
            var script = Path.Combine(folder, "node_modules", "axe-core", "axe.min.js");
            return File.Exists(script) ? await File.ReadAllTextAsync(script, TestContext.Current.CancellationToken) : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
