using LabPipeline.Reporting.Labels;
using LabPipeline.Reporting.Tests.Exports;
using LabPipeline.Reporting.Tests.Planning;

namespace LabPipeline.Reporting.Tests.Labels;

public sealed class BlindCodesTests
{
    [Fact]
    public void Of_APlan_GivesEveryPlotACodeOfItsOwn()
    {
        var plan = OutlineExample.Plan();
        var codes = plan.Plots.Select(BlindCodes.Of(plan, 5).Of).ToList();

        Assert.Equal(24, codes.Distinct().Count());
        Assert.All(codes, code => Assert.Matches("^[A-HJ-NPR-Z][0-9]{2}$", code));
        Assert.Equal(codes, plan.Plots.Select(BlindCodes.Of(plan, 5).Of));
        Assert.NotEqual(codes, plan.Plots.Select(BlindCodes.Of(plan, 6).Of));
    }

    [Fact]
    public void ToCsv_OfTheCodes_IsTheKeyToThem()
    {
        var plan = OutlineExample.Plan();
        var codes = BlindCodes.Of(plan, 5);
        var rows = ExportLab.Parse(codes.ToCsv());

        Assert.Equal(24, rows.Count);
        Assert.All(plan.Plots, plot =>
        {
            var row = rows.Single(row => (string)row["plot"] == plot.Code);
            Assert.Equal((codes.Of(plot), plan.CloneOf(plot), "5"), (row["blind_code"], row["clone"], row["seed"]));
        });
    }
}
