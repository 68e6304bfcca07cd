using LabPipeline.Science.Quantities;

namespace LabPipeline.Board.Tests.Controls;

public sealed class ControlsPageTests
{
    private const string Hostile = "<script>alert('x')</script>";

    [Fact]
    public async Task Controls_WithoutAny_SayThatNothingWasMeasured()
    {
        await using var board = await RunningBoard.StartAsync();

        Assert.Contains("No control material has been measured yet.", await board.PageAsync("/controls"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Controls_OfAChart_AreHeldAgainstTheStoredLimitsInWords()
    {
        await using var board = await RunningBoard.StartAsync();
        await AddControlsAsync(board, "analyser A", "CTRL");

        var page = await board.PageAsync("/controls?chart=analyser%20A%7CCTRL%7Cglucose_in_extract");
        var text = PageText.Of(page);

        Assert.Contains("R2 2026-01-06 10:00 0.07 0.05 0.045 to 0.055 □ failed 1 of 1 controls outside the stated tolerance", text, StringComparison.Ordinal);
        Assert.Contains("R1 2026-01-05 10:00 0.051 0.05 0.045 to 0.055 ● within limits", text, StringComparison.Ordinal);
        Assert.Contains("data-kind=\"failed\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Controls_OfAChartNobodyKnows_SaySo()
    {
        await using var board = await RunningBoard.StartAsync();
        await AddControlsAsync(board, "analyser A", "CTRL");

        Assert.Contains("Found the chart 'x'", PageText.Of(await board.PageAsync("/controls?chart=x")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Controls_WithMarkupInTheirNames_ShowItAsText()
    {
        await using var board = await RunningBoard.StartAsync();
        await AddControlsAsync(board, Hostile, Hostile);

        foreach (var address in new[] { "/controls", "/controls?chart=" + Uri.EscapeDataString(Hostile), "/office/limits" })
        {
            var page = await board.PageAsync(address);

            Assert.DoesNotContain("<script>alert", page, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
        }
    }

    internal static Task AddControlsAsync(RunningBoard board, string instrument, string material) => board.InsertAsync(
        """
        insert into instrument_run values (71, @instrument, 'R1'), (72, @instrument, 'R2');
        insert into control_check values (701, 71, 'a', @quantity, @material, 0.051, 0, '0.051', 'g/L', null, null, '2026-01-05T09:00:00.000Z', null, 1, 1, 0),
                                         (702, 72, 'a', @quantity, @material, 0.07, 0, '0.07', 'g/L', null, null, '2026-01-06T09:00:00.000Z', null, 1, 2, 0);
        insert into control_limit values (@instrument, @material, @quantity, 1, 'target', 0.05, null, 0.045, 0.055, 0, '[]', '2026-01-01T00:00:00.000Z', '2026-01-01T00:00:00.000Z', 'JR', 'certificate');
        """,
        new { instrument, material, quantity = QuantityCatalogue.GlucoseInExtract.Id });
}
