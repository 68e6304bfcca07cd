using System.Net;
using LabPipeline.Board.People;

namespace LabPipeline.Board.Tests.Papers;

public sealed class PapersTests
{
    private const string Hostile = "<script>alert('x')</script>";

    [Fact]
    public async Task Labels_OfAPull_SayWhatTheSampleIsOnSheetsOfA4()
    {
        await using var board = await FilledAsync();

        var page = await board.PageAsync("/papers?trial=NT26&pull=2");

        Assert.Contains("2 labels on 1 sheets of A4.", PageText.Of(page), StringComparison.Ordinal);
        // ISO 216: A4 is 210 mm x 297 mm.
        Assert.Contains("width=\"210mm\" height=\"297mm\"", page, StringComparison.Ordinal);
        Assert.Contains(Season.Measured, page, StringComparison.Ordinal);
        Assert.Contains($"check {Season.Measured[^1]}", page, StringComparison.Ordinal);
        Assert.Contains("NT-127 / 200 kg/ha", page, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Labels_OfHalves_CarryBothCodes()
    {
        await using var board = await FilledAsync();

        var page = await board.PageAsync("/papers?trial=NT26&pull=2&paper=halves");

        Assert.Contains("4 labels on 1 sheets of A4.", PageText.Of(page), StringComparison.Ordinal);
        Assert.Contains($">{Season.Measured}-S<", page, StringComparison.Ordinal);
        Assert.Contains($">{Season.Measured}-F<", page, StringComparison.Ordinal);
    }

    // The trial's samples have five tubers; each has two halves.
    [Fact]
    public async Task Labels_OfEachTuber_AreTenASample()
    {
        await using var board = await FilledAsync();

        Assert.Contains("20 labels on 1 sheets of A4.", PageText.Of(await board.PageAsync("/papers?trial=NT26&pull=2&paper=tubers")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PickList_OfAPull_NamesEveryBagOfTheBayAskedFor()
    {
        await using var board = await FilledAsync();
        await board.InsertAsync("insert into bay values ('NT26', 'B2', 9); update plot set bay_code = 'B2' where plot_code = '102'");

        var whole = PageText.Of(await board.PageAsync("/papers?trial=NT26&pull=2&paper=pick-list"));
        var bay = PageText.Of(await board.PageAsync("/papers?trial=NT26&pull=2&paper=pick-list&bay=B2"));

        Assert.Contains("Due 2026-01-12, day 125 after harvest; window 2026-01-12 to 2026-01-14. 2 bags of 5 tubers.", whole, StringComparison.Ordinal);
        Assert.Contains($"Bay B1: 1 bags Brought Plot Block Sample Mass (g) Remarks 101 1 {Season.Measured}", whole, StringComparison.Ordinal);
        Assert.DoesNotContain("is closed", whole, StringComparison.Ordinal);
        Assert.DoesNotContain(Season.Measured, bay, StringComparison.Ordinal);
        Assert.Contains($"Bay B2: 1 bags Brought Plot Block Sample Mass (g) Remarks 102 1 {Season.Unmeasured}", bay, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PickList_OfAPullThatHasClosed_SaysSo()
    {
        await using var board = await FilledAsync();

        Assert.Contains("Pull 1 of NT26 is closed", PageText.Of(await board.PageAsync("/papers?trial=NT26&pull=1&paper=pick-list")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/papers?trial=XX")]
    [InlineData("/papers?trial=NT26&pull=9")]
    public async Task Papers_OfNothingKnown_SaySo(string address)
    {
        await using var board = await FilledAsync();

        Assert.Contains("Found no such trial and pull", PageText.Of(await board.PageAsync(address)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Labels_FromAPlaceNoSheetHas_AreRefusedAndNothingIsDrawn()
    {
        await using var board = await FilledAsync();

        var page = await board.PageAsync("/papers?trial=NT26&pull=2&first=99");

        Assert.Contains("first place: found 99; expected 1 to 14", PageText.Of(page), StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"paper\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Labels_WithMarkupInAName_ShowItAsText()
    {
        await using var board = await FilledAsync();
        await board.InsertAsync("update plot set block = @Hostile", new { Hostile });

        foreach (var paper in new[] { "tags", "pick-list" })
        {
            var page = await board.PageAsync($"/papers?trial=NT26&pull=2&paper={paper}&bay={Uri.EscapeDataString(Hostile)}");

            Assert.DoesNotContain("<script>", page, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Pdf_OfLabels_IsAFileOfTheSameSheets()
    {
        await using var board = await FilledAsync();
        await board.SignInAsync(RoleNames.Look);

        using var answer = await board.GetAsync("/papers/labels.pdf?trial=NT26&pull=2&paper=tags");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        // ISO 32000-1, 7.5.2: a file begins with %PDF-.
        Assert.StartsWith("%PDF-", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/papers")]
    [InlineData("/papers/labels.pdf?trial=NT26&pull=2")]
    [InlineData("/controls")]
    [InlineData("/office/services")]
    public async Task Page_ForNobody_AsksToSignIn(string address)
    {
        await using var board = await RunningBoard.StartForNobodyAsync();

        using var answer = await board.GetAsync(address);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("/sign-in", answer.Headers.Location?.ToString(), StringComparison.Ordinal);
    }

    private static async Task<RunningBoard> FilledAsync()
    {
        var board = await RunningBoard.StartAsync();
        await Season.FillAsync(board);
        await board.InsertAsync(
            """
            insert into factor_level values ('NT26', 'clone', 'NT-127', null, 1), ('NT26', 'clone', 'NT-9', null, 2), ('NT26', 'nitrogen', '0', 'kg/ha', 3), ('NT26', 'nitrogen', '200', 'kg/ha', 4);
            insert into plot_level values ('NT26', '101', 'clone', 'NT-127'), ('NT26', '101', 'nitrogen', '200'), ('NT26', '102', 'clone', 'NT-9'), ('NT26', '102', 'nitrogen', '0');
            """);
        return board;
    }
}
