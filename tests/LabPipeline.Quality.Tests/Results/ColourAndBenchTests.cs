using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;
using LabPipeline.Testing;

namespace LabPipeline.Quality.Tests.Results;

/// <summary>Colours against B_xyz_to_hunter.csv and B_xyz_to_cielab.csv (CIE and Hunter formulas, computed to 40 digits), defects by hand.</summary>
public sealed class ColourAndBenchTests
{
    // Both references are rounded to 8 decimals; going back through X, Y, Z magnifies that up to tenfold.
    private const decimal Tolerance = 1e-6m;

    [Fact]
    public void Means_OfTheReportedScale_NeedNoMethodFacts()
    {
        var sample = Hunter(new SampleBuilder(), (1, 1, 60m, 2m, 20m), (1, 2, 64m, 4m, 22m));

        Assert.Equal((62m, 2, "mean of 2 chips"), Shape(sample, QuantityCatalogue.MeanHunterL));
        Assert.Equal(3m, sample.Result(QuantityCatalogue.MeanHunterA)!.Value);
        Assert.Equal(21m, sample.Result(QuantityCatalogue.MeanHunterB)!.Value);
    }

    [Fact]
    public void OtherScale_WhenMethodFactsAreMissing_IsNotComputedAndSaysWhy()
    {
        var computed = Hunter(new SampleBuilder().Fact(MethodFactNames.Illuminant, "D65"), (1, 1, 60m, 2m, 20m)).Compute();

        Assert.DoesNotContain(computed.Results, result => result.Quantity == QuantityCatalogue.MeanCielabL);
        var fault = Assert.Single(computed.Faults);
        Assert.False(fault.IsUnusable);
        Assert.Equal("is not computed from hunter_l: observer is not stated; hunterForm is not stated", fault.Found);
    }

    /// <summary>X = Ka⁻¹ a L/100 + (L/100)² is below zero for a = -90 at L 20, whatever the positive Ka.</summary>
    [Fact]
    public void OtherScale_WhenNoReflectingChipHasTheColour_IsNotComputedForAnyChip()
    {
        var computed = Hunter(Stated(new SampleBuilder()), (1, 1, 60m, 2m, 20m), (1, 2, 20m, -90m, 20m)).Compute();

        Assert.DoesNotContain(computed.Results, result => result.Quantity == QuantityCatalogue.MeanCielabL);
        Assert.Equal(40m, computed.Results.Single(result => result.Quantity == QuantityCatalogue.MeanHunterL).Value);
        var fault = Assert.Single(computed.Faults);
        Assert.True(fault.IsUnusable);
        Assert.Equal("cannot be computed from the colour 20, -90, 20, expected one a reflecting chip can have", fault.Found);
    }

    [Theory]
    [InlineData("light fried chip (invented)")]
    [InlineData("acceptable chip (invented)")]
    [InlineData("dark chip (invented)")]
    [InlineData("stem-end dark spot (invented)")]
    public void Cielab_FromHunter_AgreesWithTheReferenceThroughXyz(string name)
    {
        // One X, Y, Z under D65/10: its Hunter values (tabulated form) must come back as its L*, a*, b* (CIE 15 white).
        var cielab = Row("B_xyz_to_cielab.csv", name, row => true);
        var hunter = Row("B_xyz_to_hunter.csv", name, row => row.Text("coefficient_form") == "tabulated");
        var sample = Hunter(Stated(new SampleBuilder()), (1, 1, hunter.Exact("L_hunter"), hunter.Exact("a_hunter"), hunter.Exact("b_hunter")));

        Assert.InRange(sample.Result(QuantityCatalogue.MeanCielabL)!.Value - cielab.Exact("L_star"), -Tolerance, Tolerance);
        Assert.InRange(sample.Result(QuantityCatalogue.MeanCielabA)!.Value - cielab.Exact("a_star"), -Tolerance, Tolerance);
        Assert.InRange(sample.Result(QuantityCatalogue.MeanCielabB)!.Value - cielab.Exact("b_star"), -Tolerance, Tolerance);
    }

    [Fact]
    public void Hunter_FromCielab_IsConvertedChipByChipAndCountsDarkChips()
    {
        var there = Stated(new SampleBuilder());
        Hunter(there, (1, 1, 50m, 5m, 18m), (1, 2, 70m, 1m, 22m));
        var cielab = new[] { 1, 2 }.Select(slice =>
        {
            var one = Stated(new SampleBuilder());
            Hunter(one, slice == 1 ? (1, 1, 50m, 5m, 18m) : (1, 2, 70m, 1m, 22m));
            return (slice, L: one.Result(QuantityCatalogue.MeanCielabL)!.Value, A: one.Result(QuantityCatalogue.MeanCielabA)!.Value, B: one.Result(QuantityCatalogue.MeanCielabB)!.Value);
        }).ToList();
        var back = Stated(new SampleBuilder());
        cielab.ForEach(chip => back.Chip(1, chip.slice, (QuantityCatalogue.CielabL, chip.L), (QuantityCatalogue.CielabA, chip.A), (QuantityCatalogue.CielabB, chip.B)));

        Assert.Equal(60m, back.Result(QuantityCatalogue.MeanHunterL)!.Value, 6);
        Assert.Equal((50m, 2, "1 of 2 chips"), Shape(back, QuantityCatalogue.DarkChips));
        Assert.Equal("mean of 2 chips, converted by X, Y, Z", back.Result(QuantityCatalogue.MeanHunterL)!.Basis);
    }

    [Fact]
    public void DarkChips_ExactlyAtTheLimit_AreNotDark()
    {
        var sample = Hunter(new SampleBuilder(), (1, 1, 55m, 2m, 20m), (1, 2, 54.9m, 2m, 20m), (1, 3, 60m, 2m, 20m), (2, 1, 61m, 2m, 20m));

        Assert.Equal(25m, sample.Result(QuantityCatalogue.DarkChips)!.Value);
    }

    [Fact]
    public void Chips_ReadTwice_CountOnceWithTheirMean()
    {
        var sample = Hunter(new SampleBuilder(), (1, 1, 54m, 2m, 20m), (1, 1, 58m, 2m, 20m), (1, 2, 60m, 2m, 20m));

        Assert.Equal((58m, 2, "mean of 2 chips"), Shape(sample, QuantityCatalogue.MeanHunterL));
        Assert.Equal(0m, sample.Result(QuantityCatalogue.DarkChips)!.Value);
    }

    [Fact]
    public void Undesirable_WhenAChipHasSeveralDefects_CountsItOnce()
    {
        var sample = new SampleBuilder()
            .Chip(1, 1, (QuantityCatalogue.StemEndDefect, 4m), (QuantityCatalogue.Bruise, 1m), (QuantityCatalogue.Greening, 1m))
            .Chip(1, 2, (QuantityCatalogue.StemEndDefect, 2m), (QuantityCatalogue.Bruise, 0m), (QuantityCatalogue.Greening, 0m))
            .Chip(1, 3, (QuantityCatalogue.StemEndDefect, 0m), (QuantityCatalogue.Bruise, 0m), (QuantityCatalogue.Greening, 1m))
            .Chip(2, 1, (QuantityCatalogue.StemEndDefect, 0m), (QuantityCatalogue.Bruise, 0m), (QuantityCatalogue.Greening, 0m));

        Assert.Equal((50m, 4, "2 of 4 chips"), Shape(sample, QuantityCatalogue.UndesirableChips));
        Assert.Equal(1.5m, sample.Result(QuantityCatalogue.MeanStemEndDefect)!.Value);
        Assert.Equal(25m, sample.Result(QuantityCatalogue.SevereStemEnd)!.Value);
    }

    [Fact]
    public void Severe_FromTheTrialsScoreOn_IncludesTheScoreItself()
    {
        var sample = new SampleBuilder().Chip(1, 1, (QuantityCatalogue.StemEndDefect, 3m)).Chip(1, 2, (QuantityCatalogue.StemEndDefect, 2m));

        Assert.Equal(50m, sample.Result(QuantityCatalogue.SevereStemEnd)!.Value);
    }

    [Fact]
    public void CleanedSurface_OfSeveralTubers_IsTheirMean()
    {
        var sample = new SampleBuilder();
        foreach (var (tuber, share) in new[] { (1, 85m), (2, 95m) })
        {
            sample.Row(reading => reading with { Tuber = tuber }, (QuantityCatalogue.CleanedSurface, share));
        }

        Assert.Equal((90m, 2, "mean of 2 tubers"), Shape(sample, QuantityCatalogue.MeanCleanedSurface));
    }

    private static ReferenceRow Row(string table, string name, Func<ReferenceRow, bool> which) => ReferenceTable.Load(table).Rows.Single(
        row => row.Text("sample") == name && row.Text("illuminant") == "D65" && row.Text("observer_deg") == "10" && which(row));

    private static SampleBuilder Stated(SampleBuilder sample) => sample.Fact(MethodFactNames.Illuminant, "D65")
        .Fact(MethodFactNames.Observer, "10").Fact(MethodFactNames.HunterForm, "tabulated");

    private static SampleBuilder Hunter(SampleBuilder sample, params (int Tuber, int Slice, decimal L, decimal A, decimal B)[] chips)
    {
        foreach (var chip in chips)
        {
            sample.Chip(chip.Tuber, chip.Slice, (QuantityCatalogue.HunterL, chip.L), (QuantityCatalogue.HunterA, chip.A), (QuantityCatalogue.HunterB, chip.B));
        }

        return sample;
    }

    private static (decimal Value, int N, string Basis) Shape(SampleBuilder sample, Quantity quantity)
    {
        var result = sample.Result(quantity)!;
        return (result.Value, result.N, result.Basis);
    }
}
