using LabPipeline.Science.Gravity;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Gravity;

/// <summary>
/// Against D_specific_gravity_table.csv, D_specific_gravity_examples.csv, D_water_density_tanaka2001.csv and D_mass_loss_examples.csv; the published
/// relations behind the table are named with each <see cref="SolidsRelation"/>.
/// </summary>
public sealed class GravityTests
{
    [Theory]
    [InlineData("dry_matter_pct_vonScheele1937", "dry_matter_von_scheele_1937")]
    [InlineData("starch_pct_vonScheele1937", "starch_von_scheele_1937")]
    [InlineData("starch_pct_EU_underwater_weight", "starch_underwater_weight_5050")]
    [InlineData("starch_pct_264b/a-6", "starch_weight_ratio_264")]
    [InlineData("dry_matter_pct_278b/a", "dry_matter_weight_ratio_278")]
    [InlineData("solids_pct_Kleinkopf1987_UNVERIFIED", "solids_kleinkopf_1987_unverified")]
    public void Percent_OverTheWholeTable_AgreesToThreeDecimals(string column, string relation)
    {
        var rows = ReferenceTable.Load("D_specific_gravity_table.csv").Rows;

        Assert.Equal(81, rows.Count);
        Assert.All(rows, row => Assert.Equal(row.Number(column), (double)SolidsRelation.Named(relation).Percent(row.Exact("SG")), 0.00051));
    }

    [Fact]
    public void DryMatter_VonScheele_ReproducesThePublishedTradeTable()
    {
        // The published rows were seen; the table's 1.090 row is 0.005 off by its own rounding, hence 0.011.
        var rows = ReferenceTable.Load("D_specific_gravity_table.csv").Rows.Where(row => row.Has("published_table_dry_matter_pct")).ToList();

        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Equal(
            row.Number("published_table_dry_matter_pct"), (double)SolidsRelation.DryMatterVonScheele1937.Percent(row.Exact("SG")), 0.011));
    }

    [Fact]
    public void UnderwaterWeight_OverTheWholeTable_AgreesAndRoundTrips()
    {
        foreach (var row in ReferenceTable.Load("D_specific_gravity_table.csv").Rows)
        {
            var gravity = row.Exact("SG");
            var official = SpecificGravity.UnderwaterWeightGrams(gravity);

            Assert.Equal(row.Number("underwater_weight_of_5050g_g"), (double)official, 0.0051);
            Assert.Equal(row.Number("underwater_weight_of_5000g_g"), (double)SpecificGravity.UnderwaterWeightGrams(gravity, 5000m), 0.0051);
            Assert.Equal(gravity, decimal.Round(SpecificGravity.FromUnderwaterWeight(official), 12));
        }
    }

    [Fact]
    public void FromWeights_OnTheExamples_AgreesToSixDecimals()
    {
        foreach (var row in ReferenceTable.Load("D_specific_gravity_examples.csv").Rows)
        {
            var gravity = SpecificGravity.FromWeights(row.Exact("weight_in_air"), row.Exact("weight_in_water"));

            Assert.Equal(row.Exact("SG"), decimal.Round(gravity, 6));
            Assert.Equal(row.Number("dry_matter_pct_vonScheele"), (double)SolidsRelation.DryMatterVonScheele1937.Percent(gravity), 0.00011);
            Assert.Equal(row.Number("starch_pct_vonScheele"), (double)SolidsRelation.StarchVonScheele1937.Percent(gravity), 0.00011);
        }
    }

    [Fact]
    public void WaterDensity_OnTheTable_AgreesToFourDecimals()
    {
        foreach (var row in ReferenceTable.Load("D_water_density_tanaka2001.csv").Rows)
        {
            Assert.Equal(row.Number("density_kg_m3"), WaterDensity.KilogramsPerCubicMetre(row.Number("t_C")), 0.00006);
            Assert.Equal(row.Number("true_density_g_mL_when_SG_reads_1.080"), SpecificGravity.DensityGramsPerMillilitre(1.080, row.Number("t_C")), 0.0000006);
        }
    }

    [Fact]
    public void AtReferenceTemperature_WhenWaterWasWarm_LowersTheReading()
    {
        // Warm water is lighter, so the same tubers weigh more in it and read high: 1.080 x 997.0470/999.1026 = 1.077778 (densities at 25 and 15 degC of the same source).
        Assert.Equal(1.077778, SpecificGravity.AtReferenceTemperature(1.080, 25, 15), 0.000002);
        Assert.Equal(1.080, SpecificGravity.AtReferenceTemperature(1.080, 12, 12), 1e-12);
    }

    [Fact]
    public void MassLoss_OnTheExamples_AgreesToFourDecimals()
    {
        foreach (var row in ReferenceTable.Load("D_mass_loss_examples.csv").Rows)
        {
            var (before, after) = (row.Exact("before"), row.Exact("after"));
            var percent = row.Text("quantity") switch
            {
                "fry yield" => MassLoss.FryYieldPercent(before, after),
                "storage weight loss (shrink)" => MassLoss.ShrinkPercent(before, after),
                _ => MassLoss.PeelPercent(before, after),
            };

            Assert.Equal(row.Exact("percent"), decimal.Round(percent, 4));
        }
    }

    [Fact]
    public void Relations_Names_AreStableAndUnique()
    {
        Assert.Equal(SolidsRelation.All.Count, SolidsRelation.All.Select(relation => relation.Name).Distinct().Count());
        Assert.All(SolidsRelation.All, relation => Assert.Same(relation, SolidsRelation.Named(relation.Name)));
        Assert.Contains("dry_matter_von_scheele_1937", Assert.Throws<ArgumentException>(() => SolidsRelation.Named("mine")).Message, StringComparison.Ordinal);
        Assert.False(SolidsRelation.SolidsKleinkopf1987.IsVerified);
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecificGravity.FromWeights(0m, 0m));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecificGravity.FromWeights(3652m, 3652m));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecificGravity.FromWeights(3652m, -1m));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecificGravity.UnderwaterWeightGrams(0.99m));
        Assert.Throws<ArgumentOutOfRangeException>(() => SolidsRelation.DryMatterVonScheele1937.Percent(1.0399m));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterDensity.KilogramsPerCubicMetre(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterDensity.KilogramsPerCubicMetre(41));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassLoss.PeelPercent(0m, 0m));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassLoss.FryYieldPercent(100m, -1m));
    }
}
