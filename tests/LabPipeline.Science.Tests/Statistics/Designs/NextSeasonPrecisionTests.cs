using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.Tests;
using LabPipeline.Science.Tests.Statistics.LinearModels;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Designs;

public sealed class NextSeasonPrecisionTests
{
    /// <summary>G_sed_lsd.csv, Grover and Rai 2010: 4 blocks, 4 subsamples a plot give the SED of the season itself.</summary>
    [Fact]
    public void StandardErrorOfDifference_WhenTheSeasonIsRepeated_EqualsItsSed()
    {
        var expected = ReferenceTable.Load("G_sed_lsd.csv").Find("dataset", "grover_rcbd_subsample");
        var components = ReferenceTable.Load("G_variance_components.csv").Rows.Where(row => row.Text("dataset") == "grover_rcbd_subsample").ToArray();

        var precision = NextSeasonPrecision.FromSubsampling(
            components.Single(row => row.Text("component") == "block:trt").Number("variance"),
            components.Single(row => row.Text("component") == "Residual").Number("variance"), 4, 24);

        CheckData.Near(expected.Number("SED"), precision.StandardErrorOfDifference(4), 1e-6); // the components are REML values
    }

    [Fact]
    public void StandardErrorOfDifference_WhenTubersAreAdded_StopsAtThePlotVariance()
    {
        double Sed(int tubers) => NextSeasonPrecision.FromSubsampling(9, 90, tubers, 12).StandardErrorOfDifference(4);

        Assert.True(Sed(20) < Sed(10));
        Assert.True(Sed(100_000) > Math.Sqrt(2 * 9 / 4.0));
    }

    /// <summary>The season's variance reaches the plan unchanged; the plan itself is checked with the power tests.</summary>
    [Fact]
    public void Plan_WhenAskedForPower_UsesTheVarianceFound()
    {
        var precision = new NextSeasonPrecision("Residual", 4, 15);

        Assert.Equal(new RandomisedBlockPlan(4, 4, 0.05).PowerOfComparison(6, 3), precision.Plan(4, 0.05).PowerOfComparison(6, 3));
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        var precision = new NextSeasonPrecision("Residual", 4, 15);

        Assert.Throws<ArgumentOutOfRangeException>(() => precision.StandardErrorOfDifference(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => precision.StandardErrorOfDifference(4, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => NextSeasonPrecision.FromSubsampling(-1, 1, 1, 10));
    }
}
