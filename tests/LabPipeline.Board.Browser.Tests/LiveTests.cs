using LabPipeline.Board.People;
using static Microsoft.Playwright.Assertions;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>What is new in the warehouse shows by itself.</summary>
[Collection(BrowserTests.Name)]
public sealed class LiveTests(DemoBoard board)
{
    // What is promised: the script asks every second, the answer is at most half a second old, the page is made anew in what is left.
    private static readonly TimeSpan Promised = TimeSpan.FromSeconds(2);

    // Only so that a test on an overloaded machine ends with the times it measured instead of a time-out.
    private const int Patience = 20_000;

    private const int Changes = 5;

    [Fact]
    public async Task Alert_WhenRaised_ShowsWithoutReloadAndLeavesTheKeyboardWhereItWas()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Look, "/alerts?level=note");
        var link = page.Locator(".alert h2 a").First;
        await link.FocusAsync();
        await page.EvaluateAsync("window.kept = true");
        await page.WaitForResponseAsync("**/live");

        await RaiseAsync("Raised just now.");

        await Expect(page.GetByText("Raised just now.")).ToBeVisibleAsync(new() { Timeout = Patience });
        Assert.True(await page.EvaluateAsync<bool>("window.kept"));
        await Expect(link.Or(page.Locator(".alert h2 a:focus"))).Not.ToHaveCountAsync(0);
        Assert.NotEqual(0, await page.Locator(".alert h2 a:focus").CountAsync());
    }

    /// <summary>From the commit to the words in the page, by the one clock of this computer. The median of several: the machine runs other tests, which delay some and quicken none.</summary>
    [Fact]
    public async Task Alert_WhenRaised_ShowsWithinTwoSeconds()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Look, "/alerts?level=note");
        await page.WaitForResponseAsync("**/live");
        await page.EvaluateAsync(
            """
            window.shownAt = {};
            new MutationObserver(() => {
                for (const word of document.getElementById("alerts").textContent.match(/Timed-\d+/g) ?? []) {
                    window.shownAt[word] ??= Date.now();
                }
            }).observe(document.getElementById("alerts"), { childList: true, subtree: true });
            """);
        var waits = new List<TimeSpan>();
        for (var change = 1; change <= Changes; change++)
        {
            await RaiseAsync($"Timed-{change} alert.");
            var committed = DateTimeOffset.UtcNow;
            await Expect(page.GetByText($"Timed-{change} alert.")).ToBeVisibleAsync(new() { Timeout = Patience });
            waits.Add(DateTimeOffset.FromUnixTimeMilliseconds(await page.EvaluateAsync<long>($"window.shownAt['Timed-{change}']")) - committed);
        }

        var median = waits.Order().ElementAt(Changes / 2);
        Assert.True(median <= Promised, $"Shown after {string.Join(", ", waits.Select(wait => wait.TotalSeconds.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)))} s.");
    }

    private Task RaiseAsync(string headline) => board.ExecuteAsync(
        """
        insert into qc_alert (fingerprint, rule_name, level, scope, headline, advice, facts, state, times_raised, opened_at, changed_at)
        values (@headline, 'late pull', 'note', 'live', @headline, 'Look.', '{}', 'open', 1, '2030-01-01T00:00:00.000Z', '2030-01-01T00:00:00.000Z');
        insert into change_log (at, who, what, subject, why) values ('2030-01-01T00:00:00.000Z', 'test', 'alert opened', 'alert:0', 'live')
        """,
        new { headline });
}
