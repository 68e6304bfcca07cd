using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Testing;

namespace LabPipeline.Quality.Tests.Results;

/// <summary>The laboratory's own repeatability from E_pooled_duplicates.csv (invented pairs); the halves are worked out by hand from its pairs.</summary>
public sealed class RepeatabilityReviewTests
{
    [Fact]
    public void Estimate_OfPairs_TakesTheConstantFromTheLowerAndTheShareFromTheUpperHalf()
    {
        var pairs = ReferenceTable.Load("E_pooled_duplicates.csv").Find("quantity", "pairs").Text("value").Split(' ')
            .Select(pair => pair.Split('/').Select(text => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture)).ToList())
            .Select(pair => new DuplicatePair(pair[0], pair[1])).ToList();

        var model = RepeatabilityReview.Estimate(QuantityCatalogue.Glucose, pairs);

        // Lower four by mean: d 0.004 0.001 0.002 0.002, sqrt(25e-6 / 8). Upper four: d/mean 0.003/0.0535, 0, 0.005/0.0555, 0.001/0.0605.
        Assert.Equal(0.0017677670m, decimal.Round(model.Constant, 10));
        Assert.Equal(0.0379701m, decimal.Round(model.Relative, 7));
        Assert.True(model.IsProvisional);
    }

    [Theory]
    [InlineData(14, true)]
    [InlineData(15, false)]
    public void Estimate_FromFifteenPairsOn_IsTheLabsOwn(int count, bool provisional)
    {
        var pairs = Enumerable.Range(1, count).Select(level => new DuplicatePair(level, level + 0.1m)).ToList();

        Assert.Equal(provisional, RepeatabilityReview.Estimate(QuantityCatalogue.Glucose, pairs).IsProvisional);
    }

    [Fact]
    public void Estimate_OfOnePair_IsRefusedWithWhatIsNeeded()
    {
        var refusal = Assert.Throws<ArgumentException>(() => RepeatabilityReview.Estimate(QuantityCatalogue.Glucose, [new DuplicatePair(1m, 2m)]));

        Assert.Contains("Found 1 pairs", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pairs_OfSamples_AreTheirFirstTwoExtractsWithNumbers()
    {
        var three = new SampleBuilder().Extract("A", 0.10m, 100m, 100m).Extract("B", 0.11m, 100m, 100m).Extract("C", 0.20m, 100m, 100m).Compute();
        var censored = new SampleBuilder().Extract("A", 0.10m, 100m, 100m).Extract("B", null, 100m, 100m).BelowLimit("B", QuantityCatalogue.GlucoseInExtract, 0.05m).Compute();
        var single = new SampleBuilder().Extract("A", 0.10m, 100m, 100m).Compute();

        Assert.Equal([new DuplicatePair(0.10m, 0.11m)], RepeatabilityReview.PairsOf([three, censored, single], QuantityCatalogue.Glucose));
    }

    [Theory]
    [InlineData(0.01, 0.0014)]
    [InlineData(0.05, 0.0022)]
    [InlineData(-0.05, 0.0022)]
    public void Model_AtALevel_IsTheLargerOfConstantAndShare(double level, double expected) =>
        Assert.Equal((decimal)expected, ProvisionalRepeatability.Find(QuantityCatalogue.Glucose)!.SdAt((decimal)level));
}
