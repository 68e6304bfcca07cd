using System.Globalization;
using LabPipeline.Science.Repeatability;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Repeatability;

/// <summary>Duplicates against E_rpd_examples.csv and E_pooled_duplicates.csv (computed); the screening rule is customary practice (from memory).</summary>
public sealed class DuplicateTests
{
    [Fact]
    public void RelativePercentDifference_OnEveryExample_AgreesToSixDecimals()
    {
        foreach (var row in ReferenceTable.Load("E_rpd_examples.csv").Rows)
        {
            var pair = new DuplicatePair(row.Exact("x1"), row.Exact("x2"));

            Assert.Equal(row.Exact("abs_difference"), pair.AbsoluteDifference);
            Assert.Equal(row.Exact("RPD_percent"), decimal.Round(pair.RelativePercentDifference.Value, 6));
            Assert.Equal(row.Exact("s_from_pair"), decimal.Round(pair.StandardDeviation, 6));
            Assert.Equal(row.Exact("RSD_from_pair_percent"), decimal.Round(pair.RelativeStandardDeviationPercent.Value, 6));
        }
    }

    [Fact]
    public void RelativePercentDifference_OnWorkedExample10_AgreesToThreeDecimals()
    {
        // C_worked_examples.csv 10: the two duplicate extracts, unrounded.
        var pair = new DuplicatePair(0.0104m * 250m / 50.10m, 0.0112m * 250m / 49.85m);

        Assert.Equal(0.004272m, decimal.Round(pair.AbsoluteDifference, 6));
        Assert.Equal(7.907m, decimal.Round(pair.RelativePercentDifference.Value, 3));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-1, 1)]
    [InlineData(-2, 1)]
    public void RelativePercentDifference_WhenMeanIsNotAboveZero_IsNotEstimable(int first, int second)
    {
        var pair = new DuplicatePair(first, second);

        Assert.False(pair.RelativePercentDifference.IsEstimated);
        Assert.Contains("mean", pair.RelativePercentDifference.WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void Pooled_OnEightPairs_AgreesToTenDecimals()
    {
        var table = ReferenceTable.Load("E_pooled_duplicates.csv");
        var pairs = table.Find("quantity", "pairs").Text("value").Split(' ')
            .Select(text => text.Split('/'))
            .Select(ends => new DuplicatePair(decimal.Parse(ends[0], CultureInfo.InvariantCulture), decimal.Parse(ends[1], CultureInfo.InvariantCulture)))
            .ToList();

        var estimate = RepeatabilityEstimate.FromPairs(pairs);

        Assert.Equal(Value("s_r = sqrt(sum d^2 / 2n)"), decimal.Round(estimate.StandardDeviation, 10));
        Assert.Equal(Value("df"), estimate.DegreesOfFreedom);
        Assert.Equal(Value("r = 2.8 s_r"), decimal.Round(estimate.Limit, 10));
        Assert.Equal(Value("r = 2.771808 s_r (1.959964*sqrt2)"), decimal.Round(estimate.UnroundedLimit, 10));
        Assert.Equal(Value("pooled RSD_r percent"), decimal.Round(RepeatabilityEstimate.RelativePercentFromPairs(pairs).Value, 8));
        Assert.Equal(Value("mean |d|"), RepeatabilityEstimate.MeanAbsoluteDifference(pairs));

        decimal Value(string quantity) => table.Find("quantity", quantity).Exact("value");
    }

    [Theory]
    [InlineData("0.90", "1.10", DuplicateRule.RelativePercentDifference, true)]
    [InlineData("0.90", "1.1001", DuplicateRule.RelativePercentDifference, false)]
    [InlineData("0.0300", "0.0550", DuplicateRule.AbsoluteDifference, true)]
    [InlineData("0.0300", "0.0551", DuplicateRule.AbsoluteDifference, false)]
    [InlineData("-0.0100", "0.0100", DuplicateRule.AbsoluteDifference, true)]
    [InlineData("0.1249", "0.1600", DuplicateRule.AbsoluteDifference, false)]
    [InlineData("0.1250", "0.1500", DuplicateRule.RelativePercentDifference, true)]
    public void Screen_NearZero_ComparesWithTheQuantitationLimit(string first, string second, DuplicateRule rule, bool agrees)
    {
        var screen = new DuplicateScreen(20m, 0.025m);

        var verdict = screen.Compare(new DuplicatePair(decimal.Parse(first, CultureInfo.InvariantCulture), decimal.Parse(second, CultureInfo.InvariantCulture)));

        Assert.Equal((rule, agrees), (verdict.Rule, verdict.Agrees));
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => RepeatabilityEstimate.FromPairs([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DuplicateScreen(0m, 1m));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DuplicateScreen(20m, 0m));
        Assert.False(RepeatabilityEstimate.RelativePercentFromPairs([new DuplicatePair(0m, 0m)]).IsEstimated);
    }
}
