using LabPipeline.Board.People;
using static Microsoft.Playwright.Assertions;

namespace LabPipeline.Board.Browser.Tests;

/// <summary>What is new in the warehouse shows by itself.</summary>
[Collection(BrowserTests.Name)]
public sealed class LiveTests(DemoBoard board)
{
    // Ten times what is promised, for a machine that runs many tests at once; the time itself is measured below.
    private const int Patience = 20_000;

    [Fact]
    public async Task Alert_WhenRaised_ShowsWithoutReloadAndLeavesTheKeyboardWhereItWas()
    {
        Assert.SkipWhen(board.Lack is not null, board.Lack ?? "");
        var page = await board.OpenAsync(RoleNames.Look, "/alerts?level=note");
        var link = page.Locator(".alert h2 a").First;
        await link.FocusAsync();
        await page.EvaluateAsync("window.kept = true");
        await page.WaitForResponseAsync("**/live");

        await board.ExecuteAsync(
            """
            insert into qc_alert (fingerprint, rule_name, level, scope, headline, advice, facts, state, times_raised, opened_at, changed_at)
            values ('live', 'late pull', 'note', 'live', 'Raised just now.', 'Look.', '{}', 'open', 1, '2030-01-01T00:00:00.000Z', '2030-01-01T00:00:00.000Z');
            insert into change_log (at, who, what, subject, why) values ('2030-01-01T00:00:00.000Z', 'test', 'alert opened', 'alert:0', 'live')
            """);

        await Expect(page.GetByText("Raised just now.")).ToBeVisibleAsync(new() { Timeout = Patience });
        Assert.True(await page.EvaluateAsync<bool>("window.kept"));
        await Expect(link.Or(page.Locator(".alert h2 a:focus"))).Not.ToHaveCountAsync(0);
        Assert.NotEqual(0, await page.Locator(".alert h2 a:focus").CountAsync());
    }
}
