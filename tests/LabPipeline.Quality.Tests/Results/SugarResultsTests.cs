using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Testing;

namespace LabPipeline.Quality.Tests.Results;

/// <summary>Sugars against C_worked_examples.csv (invented inputs, decimal working shown there) and E_decision_examples.csv (ISO 5725-6 clause 5, from memory).</summary>
public sealed class SugarResultsTests
{
    private static readonly ReferenceTable Worked = ReferenceTable.Load("C_worked_examples.csv");

    public static TheoryData<int> Decisions => [.. ReferenceTable.Load("E_decision_examples.csv").Rows.Select(row => row.Count("case"))];

    [Fact]
    public void Sucrose_ByInversion_IsThatOfTheWorkedExample()
    {
        var sample = new SampleBuilder().Extract("A", glucose: 0.046m, mass: 50.00m, total: 0.171m);

        Assert.Equal(Published("2"), decimal.Round(sample.Result(QuantityCatalogue.Sucrose)!.Value, 6));
    }

    [Fact]
    public void Glucose_WhenDilutedOnePlusFour_IsMultipliedByFive()
    {
        var sample = new SampleBuilder().Extract("A", glucose: 0.0225m, mass: 40.0m, dilution: 5m);

        Assert.Equal(Published("4"), sample.Result(QuantityCatalogue.Glucose)!.Value);
    }

    [Fact]
    public void Glucose_WhenSolventWasAdded_CountsTheTissueWater()
    {
        // Example 5 takes 21.5 % dry matter as given; here it comes from the weights. SG = 1.0988 + (21.5 - 24.182) / 211.04.
        var sample = new SampleBuilder()
            .Bag((QuantityCatalogue.WeightInAir, 1000m), (QuantityCatalogue.WeightInWater, 1000m - (1000m / (1.0988m + ((21.5m - 24.182m) / 211.04m)))))
            .Row(
                reading => reading with { Extract = "A" }, (QuantityCatalogue.GlucoseInExtract, 0.060m), (QuantityCatalogue.ExtractFreshMass, 50.0m),
                (QuantityCatalogue.SolventVolume, 200m), (QuantityCatalogue.DilutionFactor, 1m));

        Assert.Equal(Published("5"), decimal.Round(sample.Result(QuantityCatalogue.Glucose)!.Value, 6));
    }

    [Fact]
    public void Sucrose_WhenNegativeWithoutALimit_KeepsItsSign()
    {
        var sample = new SampleBuilder().Extract("A", glucose: 0.046m, mass: 50.00m, total: 0.044m);

        var result = sample.Result(QuantityCatalogue.Sucrose)!;

        Assert.Equal(Published("7"), decimal.Round(result.Value, 6));
        Assert.False(result.BelowLimit);
    }

    [Fact]
    public void Sucrose_WhenReadDirectly_NeedsNoInversion()
    {
        var sample = new SampleBuilder().Extract("A", glucose: null, mass: 48.73m, sucrose: 0.25m);

        Assert.Equal(Published("8"), decimal.Round(sample.Result(QuantityCatalogue.Sucrose)!.Value, 6));
    }

    [Fact]
    public void Sucrose_WhenBothTotalGlucoseAndADirectReadingExist_IsByInversion()
    {
        var sample = new SampleBuilder().Extract("A", glucose: 0.046m, mass: 50.00m, total: 0.171m, sucrose: 0.9m);

        Assert.Equal(Published("2"), decimal.Round(sample.Result(QuantityCatalogue.Sucrose)!.Value, 6));
    }

    [Fact]
    public void Glucose_OfDuplicateExtracts_IsTheMeanOfTheWorkedExampleWithItsSpread()
    {
        var sample = new SampleBuilder().Extract("A", glucose: 0.0104m, mass: 50.10m).Extract("B", glucose: 0.0112m, mass: 49.85m)
            .Repeatability(QuantityCatalogue.Glucose, 0.002m);

        var result = sample.Result(QuantityCatalogue.Glucose)!;

        // Example 10: A 0.051896, B 0.056169, mean 0.054032, |d| 0.004272; s = |d| / sqrt 2.
        Assert.Equal(0.054032m, decimal.Round(result.Value, 6));
        Assert.Equal(0.003021m, decimal.Round(result.S!.Value, 6));
        Assert.Equal((2, "mean of 2"), (result.N, result.Basis));
    }

    [Fact]
    public void Ratio_OfGlucoseToSucrose_IsThatOfTheWorkedExample()
    {
        // V = m, so the content is the concentration: glucose 0.21, sucrose 1.1875 mg/g.
        var sample = new SampleBuilder().Extract("A", glucose: 0.21m, mass: 100m, volume: 100m, sucrose: 1.1875m);

        Assert.Equal(Published("14"), decimal.Round(sample.Result(QuantityCatalogue.GlucoseSucroseRatio)!.Value, 6));
    }

    [Theory]
    [MemberData(nameof(Decisions))]
    public void Glucose_OfDisagreeingExtracts_FollowsTheProcedure(int number)
    {
        var row = ReferenceTable.Load("E_decision_examples.csv").Find("case", number.ToString(System.Globalization.CultureInfo.InvariantCulture));
        var sample = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, row.Exact("s_r"))
            .AddingExtracts(row.Text("variant").StartsWith("inexpensive", StringComparison.Ordinal) ? RepeatCost.Inexpensive : RepeatCost.Expensive);
        foreach (var (value, index) in row.Text("results_mg_per_g").Split(' ').Select((text, index) => (decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture), index)))
        {
            sample.Extract($"{index + 1}", glucose: value, mass: 100m, volume: 100m);
        }

        var computed = sample.Compute();
        var result = computed.Results.Single(candidate => candidate.Quantity == QuantityCatalogue.Glucose);
        var agreement = Assert.Single(computed.Agreements);

        if (row.Has("reported_value"))
        {
            Assert.Equal(row.Text("outcome"), result.Basis);
            Assert.Equal(row.Exact("reported_value"), decimal.Round(result.Value, 6));
        }
        else
        {
            Assert.Equal($"obtain {agreement.MoreNeeded} more result{(agreement.MoreNeeded == 1 ? "" : "s")}", row.Text("outcome"));
            Assert.Equal("mean of 2, disagreement open", result.Basis);
            Assert.Equal(AgreementOutcome.Open, agreement.Outcome);
        }
    }

    [Fact]
    public void Glucose_WhenThreeExtractsDisagree_StandsAsTheirMedianMarkedOpen()
    {
        var sample = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.002m)
            .Extract("1", 0.050m, 100m, 100m).Extract("2", 0.060m, 100m, 100m).Extract("3", 0.070m, 100m, 100m);

        var result = sample.Result(QuantityCatalogue.Glucose)!;

        Assert.Equal((0.060m, "median of 3, disagreement open", 3), (result.Value, result.Basis, result.N));
    }

    [Fact]
    public void Glucose_WhenTheTrialPlansThreeExtracts_ComparesThemTogether()
    {
        // CR(3) = 3.3 x 0.002 = 0.0066: exactly on the limit agrees.
        var sample = new SampleBuilder().With(trial => trial with { ExtractsPerSample = 3 }).Repeatability(QuantityCatalogue.Glucose, 0.002m)
            .Extract("1", 0.0500m, 100m, 100m).Extract("2", 0.0566m, 100m, 100m).Extract("3", 0.0533m, 100m, 100m);

        var result = sample.Result(QuantityCatalogue.Glucose)!;

        Assert.Equal((0.0533m, "mean of 3"), (result.Value, result.Basis));
    }

    [Fact]
    public void RepeatReadings_OfOneExtract_AreAveragedFirstAndCountOnce()
    {
        var sample = new SampleBuilder().Extract("A", 0.050m, 100m, 100m).Extract("A", 0.054m, 100m, 100m, replicate: 2);

        var result = sample.Result(QuantityCatalogue.Glucose)!;

        Assert.Equal((0.052m, 1, "one extract"), (result.Value, result.N, result.Basis));
        Assert.Null(result.S);
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], result.FromReadings);
    }

    [Fact]
    public void RepeatReadings_WithDilutionsOfTheirOwn_AreEachMultipliedByTheirs()
    {
        var sample = new SampleBuilder().Extract("A", 0.050m, 100m, 100m).Extract("A", 0.0104m, 100m, 100m, dilution: 5m, replicate: 2);

        Assert.Equal(0.051m, sample.Result(QuantityCatalogue.Glucose)!.Value);
    }

    [Fact]
    public void Limit_OfQuantitation_IsCarriedThroughVolumeDilutionAndMass()
    {
        // Domain rule: 0.005 g/L, 250 mL, 50 g is 0.025 mg/g.
        var sample = new SampleBuilder().Fact("limitOfQuantitation.glucose_in_extract", "0.005").Extract("A", 0.0049m, mass: 50m);

        var result = sample.Result(QuantityCatalogue.Glucose)!;

        Assert.Equal((0.025m, true), (result.Value, result.BelowLimit));
    }

    [Fact]
    public void Limit_OfQuantitation_WhenTheReadingEqualsIt_IsNotBelow()
    {
        var sample = new SampleBuilder().Fact("limitOfQuantitation.glucose_in_extract", "0.005").Extract("A", 0.005m, mass: 50m);

        Assert.False(sample.Result(QuantityCatalogue.Glucose)!.BelowLimit);
    }

    [Fact]
    public void Readings_WithoutANumber_GiveTheirLimit()
    {
        var sample = new SampleBuilder().Extract("A", null, mass: 50m).BelowLimit("A", QuantityCatalogue.GlucoseInExtract, 0.005m);

        var result = sample.Result(QuantityCatalogue.Glucose)!;

        Assert.Equal((0.025m, true), (result.Value, result.BelowLimit));
    }

    [Fact]
    public void Sucrose_WhenFreeGlucoseIsBelowItsLimit_IsTheMiddleOfTheNarrowInterval()
    {
        // total 0.171, free 0 to 0.005 g/L: difference 0.166 to 0.171, middle 0.1685; V = m.
        var sample = new SampleBuilder().Extract("A", null, 100m, 100m, total: 0.171m).BelowLimit("A", QuantityCatalogue.GlucoseInExtract, 0.005m);

        var result = sample.Result(QuantityCatalogue.Sucrose)!;

        Assert.Equal(decimal.Round(0.1685m * 342.297m / 180.156m, 9), decimal.Round(result.Value, 9));
        Assert.Equal((false, "one extract, middle of interval"), (result.BelowLimit, result.Basis));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("0,01")]
    public void Glucose_WhenTheProfileStatesNoUsableLimit_IsNotComputedAndSaysWhatIsStated(string limit)
    {
        var computed = new SampleBuilder().Fact(MethodFactNames.LimitOf(QuantityCatalogue.GlucoseInExtract), limit).Extract("A", 0.05m, mass: 50m).Compute();

        Assert.Empty(computed.Results);
        var fault = Assert.Single(computed.Faults);
        Assert.False(fault.IsUnusable);
        Assert.Contains($"states '{limit}'", fault.Found, StringComparison.Ordinal);
        Assert.Equal("Correct the limit in the profile and read the file again.", fault.Advice);
    }

    [Fact]
    public void Glucose_WhenBelowALimitOfZero_IsUnusable()
    {
        var computed = new SampleBuilder().Extract("A", null, mass: 50m).BelowLimit("A", QuantityCatalogue.GlucoseInExtract, 0m).Compute();

        Assert.Empty(computed.Results);
        var fault = Assert.Single(computed.Faults);
        Assert.True(fault.IsUnusable);
        Assert.Equal("is below a limit of 0 g/L (sugars.csv line 3), expected a limit above 0", fault.Found);
    }

    [Fact]
    public void Mass_OfZero_GivesNoResultAndAFault()
    {
        var computed = new SampleBuilder().Extract("A", 0.05m, mass: 0m).Compute();

        Assert.DoesNotContain(computed.Results, result => result.Quantity == QuantityCatalogue.Glucose);
        var fault = Assert.Single(computed.Faults);
        Assert.True(fault.IsUnusable);
        Assert.Equal("extract A", fault.Where);
        Assert.Contains("is 0 g (sugars.csv line 2), expected more than 0", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Mass_StatedTwiceWithDifferentValues_IsAFault()
    {
        var computed = new SampleBuilder().Extract("A", 0.05m, mass: 50.1m).Extract("A", 0.05m, mass: 48.7m, replicate: 2).Compute();

        Assert.Empty(computed.Results);
        Assert.Contains("both 48.7 and 50.1 g", Assert.Single(computed.Faults).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Dilution_WhenNotStated_IsNeverAssumed()
    {
        var computed = new SampleBuilder().Row(
            reading => reading with { Extract = "A" }, (QuantityCatalogue.GlucoseInExtract, 0.05m), (QuantityCatalogue.ExtractFreshMass, 50m),
            (QuantityCatalogue.ExtractVolume, 250m)).Compute();

        Assert.Empty(computed.Results);
        Assert.False(Assert.Single(computed.Faults).IsUnusable);
    }

    [Fact]
    public void Mass_NotThereYet_IsNoFault()
    {
        var computed = new SampleBuilder().Row(reading => reading with { Extract = "A" }, (QuantityCatalogue.GlucoseInExtract, 0.05m)).Compute();

        Assert.Empty(computed.Results);
        Assert.Empty(computed.Faults);
    }

    [Fact]
    [Shows(30, 69)]
    public void Results_WhenReadingsArriveInAnotherOrder_AreTheSame()
    {
        var sample = new SampleBuilder().Extract("A", 0.0104m, 50.10m, total: 0.171m).Extract("B", 0.0112m, 49.85m, total: 0.180m);

        var (forward, backward) = (sample.Compute(), sample.Compute(readings => readings.Reverse()));

        Assert.Equal(forward.Results.Select(result => (result.Quantity, result.Value, result.Basis)), backward.Results.Select(result => (result.Quantity, result.Value, result.Basis)));
    }

    private static decimal Published(string example) =>
        decimal.Parse(Worked.Find("example", example).Text("result").Split(' ')[0].TrimEnd(':'), System.Globalization.CultureInfo.InvariantCulture);
}
