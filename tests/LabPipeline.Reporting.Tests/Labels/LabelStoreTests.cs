using LabPipeline.Reporting.Bench;
using LabPipeline.Reporting.Labels;
using LabPipeline.Reporting.Tests.Planning;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Tests.Labels;

public sealed class LabelStoreTests
{
    [Fact]
    public async Task ListAsync_OfALoadedPlan_SaysWhatTheDocumentSays()
    {
        var plan = OutlineExample.Plan();
        await using var scratch = await ScratchWarehouse.CreateAsync(DialectName.Sqlite, TimeProvider.System);
        var token = TestContext.Current.CancellationToken;
        await scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, plan, DateTimeOffset.UnixEpoch, "test"), token);

        var stored = await scratch.Warehouse.ReadAsync(
            async session => await LabelStore.ListAsync(session, (await BenchPullStore.FindAsync(session, plan.Code, 2))!), token);

        Assert.NotEmpty(stored);
        Assert.Equal(LabelSet.Samples(plan, 2, null), stored);
    }

    [Fact]
    public void Drawings_OfLabels_HoldEveryCodeAsTextAndNoMarkupFromNames()
    {
        var label = LabelSet.Samples(OutlineExample.Plan(), 2, null)[0] with { Block = "<b>" };

        var (drawings, faults) = LabelPrint.Drawings(LabelSheet.Tags, [label], 1);

        Assert.Empty(faults);
        var drawing = Assert.Single(drawings);
        Assert.Contains($">{label.Barcode}<", drawing, StringComparison.Ordinal);
        Assert.Contains("block &lt;b&gt;", drawing, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", drawing, StringComparison.Ordinal);
    }

    /// <summary>The path of a drawing inks what the printed page inks: its boxes sum to the same area.</summary>
    [Theory]
    [InlineData(LabelSymbol.Code128)]
    [InlineData(LabelSymbol.DataMatrix)]
    public void Drawings_OfASymbol_InkWhatThePageInks(LabelSymbol symbol)
    {
        var sheet = symbol == LabelSymbol.Code128 ? LabelSheet.Tags : LabelSheet.Small;
        var label = LabelSet.Samples(OutlineExample.Plan(), 2, null)[0];

        var drawing = LabelPrint.Drawings(sheet, [label], 1).Drawings[0];

        var drawn = System.Text.RegularExpressions.Regex.Matches(drawing, "h([0-9.]+)v([0-9.]+)h-").Sum(box => Number(box.Groups[1].Value) * Number(box.Groups[2].Value));
        var printed = LabelPrint.Pages(sheet, [label], 1).Pages[0].Marks.OfType<Reporting.Printing.Mark.Fill>().Sum(box => box.Width * box.Height);
        Assert.True(printed > 0);
        Assert.Equal(printed, drawn, printed * 1e-6);
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
