using LabPipeline.Science.Quantities;
using LabPipeline.Testing;

namespace LabPipeline.Quality.Tests.Results;

/// <summary>Weighing results against D_specific_gravity_examples.csv and D_mass_loss_examples.csv (computed there by the published relations).</summary>
public sealed class GravityAndMassTests
{
    public static TheoryData<string> Weighings => [.. ReferenceTable.Load("D_specific_gravity_examples.csv").Rows.Select(row => row.Text("case"))];

    [Theory]
    [MemberData(nameof(Weighings))]
    public void Gravity_DryMatterAndStarch_AreThoseOfTheExample(string name)
    {
        var row = ReferenceTable.Load("D_specific_gravity_examples.csv").Find("case", name);
        var sample = new SampleBuilder().Bag((QuantityCatalogue.WeightInAir, row.Exact("weight_in_air")), (QuantityCatalogue.WeightInWater, row.Exact("weight_in_water")));

        Assert.Equal(row.Exact("SG"), decimal.Round(sample.Result(QuantityCatalogue.SpecificGravity)!.Value, 6));
        Assert.Equal(row.Exact("dry_matter_pct_vonScheele"), decimal.Round(sample.Result(QuantityCatalogue.DryMatter)!.Value, 4));
        Assert.Equal(row.Exact("starch_pct_vonScheele"), decimal.Round(sample.Result(QuantityCatalogue.Starch)!.Value, 4));
    }

    [Fact]
    public void Gravity_OfTubersWeighedApart_IsTheirMeanWithTheirSpread()
    {
        var sample = new SampleBuilder();
        foreach (var (tuber, water) in new[] { (1, 14.1m), (2, 15.1m) })
        {
            sample.Row(reading => reading with { Tuber = tuber }, (QuantityCatalogue.WeightInAir, 182.35m), (QuantityCatalogue.WeightInWater, water));
        }

        var result = sample.Result(QuantityCatalogue.SpecificGravity)!;

        Assert.Equal(((182.35m / 168.25m) + (182.35m / 167.25m)) / 2m, result.Value, 10);
        Assert.Equal((2, "mean of 2 weighed apart"), (result.N, result.Basis));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(280, 280)]
    [InlineData(280, 300)]
    public void Gravity_WhenTheWeightsGiveNone_IsAFault(int air, int water)
    {
        var computed = new SampleBuilder().Bag((QuantityCatalogue.WeightInAir, air), (QuantityCatalogue.WeightInWater, water)).Compute();

        Assert.Empty(computed.Results);
        Assert.True(Assert.Single(computed.Faults).IsUnusable);
    }

    [Fact]
    public void DryMatter_WhenTheTrialNamesNoKnownRelation_IsNotGuessed()
    {
        var computed = new SampleBuilder().With(trial => trial with { DryMatterRelation = "the usual one" })
            .Bag((QuantityCatalogue.WeightInAir, 3652.4m), (QuantityCatalogue.WeightInWater, 283.6m)).Compute();

        Assert.Equal([QuantityCatalogue.SpecificGravity], computed.Results.Select(result => result.Quantity));
        Assert.Contains("'the usual one'", Assert.Single(computed.Faults).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void DryMatter_OutsideThePublishedRange_IsNotComputed()
    {
        var computed = new SampleBuilder().Bag((QuantityCatalogue.WeightInAir, 1000m), (QuantityCatalogue.WeightInWater, 20m)).Compute();

        Assert.Equal([QuantityCatalogue.SpecificGravity], computed.Results.Select(result => result.Quantity));
        Assert.Contains("1.0204", Assert.Single(computed.Faults).Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("peel loss", "peel_loss", "mass_before_peel", "mass_after_peel")]
    [InlineData("peel loss, small batch", "peel_loss", "mass_before_peel", "mass_after_peel")]
    [InlineData("implausible gain (error)", "peel_loss", "mass_before_peel", "mass_after_peel")]
    [InlineData("storage weight loss (shrink)", "storage_shrink", "mass_at_loading", "mass_at_pull")]
    [InlineData("fry yield", "fry_yield", "slice_mass", "chip_mass")]
    public void Losses_ByMass_AreThoseOfTheExample(string example, string quantity, string before, string after)
    {
        var row = ReferenceTable.Load("D_mass_loss_examples.csv").Find("quantity", example);
        var sample = new SampleBuilder().Bag((QuantityCatalogue.Find(before)!, row.Exact("before")), (QuantityCatalogue.Find(after)!, row.Exact("after")));

        Assert.Equal(row.Exact("percent"), decimal.Round(sample.Result(QuantityCatalogue.Find(quantity)!)!.Value, 4));
    }

    [Fact]
    public void PeelLoss_OfAZeroMass_IsAFault()
    {
        var computed = new SampleBuilder().Bag((QuantityCatalogue.MassBeforePeel, 0m), (QuantityCatalogue.MassAfterPeel, 0m)).Compute();

        Assert.Empty(computed.Results);
        Assert.Equal(QuantityCatalogue.PeelLoss, Assert.Single(computed.Faults).Quantity);
    }
}
