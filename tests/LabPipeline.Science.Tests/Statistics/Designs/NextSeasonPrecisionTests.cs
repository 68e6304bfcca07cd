using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Designs;
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

    /// <summary>t quantiles of G_t_quantiles.csv: (2.2281388520 + 0.8790578285) * sqrt(2 * 4 / 6) with 10 df; the 0.80 quantile from memory.</summary>
    [Fact]
    public void DetectableDifference_WhenSixBlocks_FollowsTheFormula() =>
        CheckData.Near((2.2281388520 + 0.8790578285) * Math.Sqrt(8.0 / 6), new NextSeasonPrecision("Residual", 4, 15).DetectableDifference(6, 10, 0.05, 0.8), 1e-8);

    [Fact]
    public void BlocksNeeded_WhenFound_IsTheSmallestThatDetects()
    {
        var precision = new NextSeasonPrecision("Residual", 4, 15);

        var blocks = precision.BlocksNeeded(3, 4, 0.05, 0.8);

        Assert.True(precision.DetectableDifference(blocks, (blocks - 1) * 3, 0.05, 0.8) <= 3);
        Assert.True(precision.DetectableDifference(blocks - 1, (blocks - 2) * 3, 0.05, 0.8) > 3);
        Assert.Throws<NotEstimableException>(() => precision.BlocksNeeded(1e-6, 4, 0.05, 0.8));
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        var precision = new NextSeasonPrecision("Residual", 4, 15);

        Assert.Throws<ArgumentOutOfRangeException>(() => precision.StandardErrorOfDifference(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => precision.DetectableDifference(4, 9, 0, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => precision.DetectableDifference(4, 9, 0.05, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => precision.BlocksNeeded(0, 4, 0.05, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => NextSeasonPrecision.FromSubsampling(-1, 1, 1, 10));
    }
}
