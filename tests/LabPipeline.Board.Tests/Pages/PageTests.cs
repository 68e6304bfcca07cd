using System.Net;

namespace LabPipeline.Board.Tests.Pages;

public sealed class PageTests : IAsyncLifetime
{
    private const string Hostile = "<script>alert('x')</script>";

    private RunningBoard _board = null!;

    public async ValueTask InitializeAsync() => _board = await RunningBoard.StartAsync();

    public ValueTask DisposeAsync() => _board.DisposeAsync();

    [Fact]
    public async Task Today_WithoutAPlan_SaysWhereItLookedAndHowToLoadOne() =>
        Assert.Contains($"Found no trial plan in {_board.WarehouseFile}.", Plain(await _board.PageAsync("/")), StringComparison.Ordinal);

    [Fact]
    public async Task Today_OfARunningTrial_ShowsEveryPullAndWhatIsNotMeasured()
    {
        await Season.FillAsync(_board);
        await Season.AddAlertAsync(_board, 1, "hold", "duplicate disagreement", "Extracts differ.");

        var page = Plain(await _board.PageAsync("/"));

        Assert.Contains("Pull 1 2025-11-03 2025-11-03 to 2025-11-07 ▲ closed with gaps 2 0 of 1", page, StringComparison.Ordinal);
        // The window's last day still belongs to it, on the calendar of the trial.
        Assert.Contains("Pull 2 2026-01-12 2026-01-12 to 2026-01-14 ◐ on the bench 2 0 of 1 1 ▲ hold", page, StringComparison.Ordinal);
        Assert.Contains("Pull 3 2026-03-02 2026-03-02 to 2026-03-06 ○ to come 2 0 of 1", page, StringComparison.Ordinal);
        Assert.Contains("glucose in extract 1 of 2 1", page, StringComparison.Ordinal);
        Assert.Contains("glucose in extract 0 of 2 2", page, StringComparison.Ordinal);
        Assert.Contains("As of 2026-01-14 16:30", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Today_WithAnUnknownTrialAskedFor_SaysSo()
    {
        await Season.FillAsync(_board);

        Assert.Contains("Found the trial code 'XX', which no plan has", Plain(await _board.PageAsync("/?trial=XX")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Alerts_WhenFiltered_ShowTheLevelAndRuleAskedFor()
    {
        await Season.AddAlertAsync(_board, 1, "note", "late pull", "Late one.");
        await Season.AddAlertAsync(_board, 2, "block", "file refused", "Refused one.", """{"file":"run.csv","found":"0,052"}""");
        await Season.AddAlertAsync(_board, 3, "note", "peel below target", "Peel one.");

        var all = Plain(await _board.PageAsync("/alerts"));
        var notes = Plain(await _board.PageAsync("/alerts?level=note&rule="));
        var late = Plain(await _board.PageAsync("/alerts?level=&rule=late%20pull"));

        Assert.Contains("■ block alert 2, file refused, open since 2026-01-14 15:02 Refused one. To do: Extract once more. file run.csv found 0,052", all, StringComparison.Ordinal);
        Assert.True(all.IndexOf("Refused one.", StringComparison.Ordinal) < all.IndexOf("Peel one.", StringComparison.Ordinal));
        Assert.DoesNotContain("Refused one.", notes, StringComparison.Ordinal);
        Assert.Contains("Peel one.", notes, StringComparison.Ordinal);
        Assert.Contains("Open alerts 1 to 1 of 1", late, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(76)]
    public async Task Alerts_WhenThereAreMany_AreShownInParts()
    {
        for (var number = 1; number <= 26; number++)
        {
            await Season.AddAlertAsync(_board, number, "note", "late pull", $"Headline {number}.");
        }

        var first = await _board.PageAsync("/alerts?level=note");
        var second = Plain(await _board.PageAsync("/alerts?level=note&page=2"));

        Assert.Contains("href=\"/alerts?level=note&amp;page=2\"", first, StringComparison.Ordinal);
        Assert.Contains("Open alerts 26 to 26 of 26", second, StringComparison.Ordinal);
        Assert.Contains("Headline 1.", second, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/alerts?level=grave", "Found the level 'grave', expected block, hold or note")]
    [InlineData("/alerts?page=0", "Found the page '0'")]
    [InlineData("/alerts?page=x", "Found the page 'x'")]
    [InlineData("/arrivals?state=lost", "Found the state 'lost', expected stored")]
    [InlineData("/arrivals?page=99", "Found the page '99'")]
    [InlineData("/sample?barcode=", "Found nothing, expected a sample barcode")]
    public async Task Question_ThatCannotBeAnswered_IsAnsweredWithWhatWasExpected(string address, string answer) =>
        Assert.Contains(answer, Plain(await _board.PageAsync(address)), StringComparison.Ordinal);

    [Fact]
    public async Task Arrivals_WhenFiltered_ShowTheStateAskedForWithItsReason()
    {
        await Season.AddFileAsync(_board, 1, "stored", null);
        await Season.AddFileAsync(_board, 2, "refused", "line 3: found 'x'");
        await _board.InsertAsync("insert into arrival values (3, 1, 'sugar', 'copy.csv', '2026-01-14T13:30:00.000Z', '2026-01-14T13:30:00.000Z', 1, 1)");
        await _board.InsertAsync("insert into held_file values ('sugar', 'half.csv', 10, 'x', 'no line end', '2026-01-14T13:40:00.000Z', '2026-01-14T13:40:00.000Z')");

        var refused = Plain(await _board.PageAsync("/arrivals?state=refused"));
        var all = Plain(await _board.PageAsync("/arrivals"));

        Assert.Contains("2026-01-14 14:02 sugar/run-002.csv ■ refused 2 new line 3: found 'x'", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("run-001.csv", refused, StringComparison.Ordinal);
        Assert.Contains("sugar/half.csv ▲ waiting no line end", all, StringComparison.Ordinal);
        Assert.Contains("sugar/copy.csv = duplicate", all, StringComparison.Ordinal);
        Assert.Contains("Files 1 to 4 of 4", all, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(76)]
    public async Task Arrivals_WhenThereAreMany_AreShownInParts()
    {
        for (var number = 1; number <= 51; number++)
        {
            await Season.AddFileAsync(_board, number, "stored", null);
        }

        var second = Plain(await _board.PageAsync("/arrivals?page=2"));

        Assert.Contains("Files 51 to 51 of 51", second, StringComparison.Ordinal);
        Assert.Contains("run-001.csv", second, StringComparison.Ordinal);
        Assert.DoesNotContain("run-002.csv", second, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("-S")]
    [InlineData("-f")]
    public async Task Sample_WhenScanned_LeadsFromThePlanToFileAndLine(string half)
    {
        await Season.FillAsync(_board);
        await Season.AddAlertAsync(_board, 1, "hold", "duplicate disagreement", "Extracts differ.", barcode: Season.Measured);

        // A wedge scanner types a Tab or a line end behind the code; typing may be lower case.
        var page = Plain(await _board.PageAsync($"/sample?barcode={Season.Measured.ToLowerInvariant()}{half}%09"));

        Assert.Contains("Trial NT26 Pull 2, due 2026-01-12 Block 1 Plot 101 Clone NT-127 Treatment nitrogen 200 Bay B1", page, StringComparison.Ordinal);
        Assert.Contains("Extracts differ.", page, StringComparison.Ordinal);
        // 0.0625 to three decimals, half to even (IEEE 754-2019, 4.3.1 roundTiesToEven).
        Assert.Contains("glucose 0.062 mg/g 1 one extract 11", page, StringComparison.Ordinal);
        Assert.Contains("11 0.052 0,052 g/L extract 1, reading 1 run-001.csv, line 14 in effect 2026-01-14 14:05 analyser A, A1 JR", page, StringComparison.Ordinal);
        Assert.Contains("12 below 0.005 < 0,005 g/L extract 2, reading 1 run-001.csv, line 15 contested", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Result_InDoubt_IsMarkedWhereverResultsShow()
    {
        await Season.FillAsync(_board);
        await _board.InsertAsync("update sample_result set in_doubt = 1; insert into reading_doubt values (11, 1, 'control CTRL read <b>0.07</b>')");

        var sample = await _board.PageAsync("/sample?barcode=" + Season.Measured);
        var season = await _board.PageAsync("/season?trial=NT26&quantity=glucose");

        Assert.Contains("glucose 0.062 ? in doubt mg/g", Plain(sample), StringComparison.Ordinal);
        Assert.Contains("in effect ? in doubt control CTRL read <b>0.07</b>", Plain(sample), StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;0.07", sample, StringComparison.Ordinal);
        Assert.Contains("0.062 ? in doubt", Plain(season), StringComparison.Ordinal);
        Assert.Contains("1 plots, 0 below their limit, 1 in doubt", season, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sample_ThatIsPlannedOnly_SaysThatNothingHasCome()
    {
        await Season.FillAsync(_board);

        var page = await _board.PageAsync("/sample?barcode=" + Season.Unmeasured);

        Assert.Contains("No reading has come yet.", page, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;NT&lt;/b&gt;", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sample_ThatNobodyKnows_SaysSo()
    {
        await Season.FillAsync(_board);

        Assert.Contains($"Nothing is known of '{Season.Unknown}'", Plain(await _board.PageAsync("/sample?barcode=" + Season.Unknown)), StringComparison.Ordinal);
    }

    [Fact]
    [Shows(72)]
    public async Task Text_FromOutside_IsNeverTakenForMarkup()
    {
        await Season.AddFileAsync(_board, 1, "refused", Hostile);
        await Season.AddAlertAsync(_board, 1, "hold", Hostile, Hostile, $$"""{"{{Hostile}}":"{{Hostile}}"}""", Hostile);
        var asked = Uri.EscapeDataString("\"" + Hostile);

        foreach (var address in new[] { "/?trial=" + asked, "/alerts", "/alerts?level=" + asked, "/alerts?rule=" + asked, "/arrivals", "/arrivals?state=" + asked, "/sample?barcode=" + asked })
        {
            var page = await _board.PageAsync(address);

            Assert.DoesNotContain("<script>", page, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("\"\"", page.Replace("value=\"\"", "", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.True(address.StartsWith("/alerts?rule", StringComparison.Ordinal) || page.Contains("&lt;script&gt;", StringComparison.Ordinal), address);
        }
    }

    /// <summary>What a reader sees: no tags, entities resolved, one space between pieces.</summary>
    private static string Plain(string page)
    {
        var text = System.Text.RegularExpressions.Regex.Replace(page, "<[^>]*>", " ");
        return System.Text.RegularExpressions.Regex.Replace(WebUtility.HtmlDecode(text), @"\s+", " ").Replace("/ run", "/run", StringComparison.Ordinal)
            .Replace("/ half", "/half", StringComparison.Ordinal).Replace("/ copy", "/copy", StringComparison.Ordinal);
    }
}
