using System.Globalization;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Sugars;
using LabPipeline.Science.Units;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Sugars;

/// <summary>Sugar arithmetic against C_worked_examples.csv (decimal working shown there) and C_molar_masses.csv (IUPAC atomic weights, from memory).</summary>
public sealed class SugarTests
{
    private static readonly Extraction Usual = new(ExtractVolume.MadeUpTo(250m), DilutionFactor.None, 50.00m);

    [Fact]
    public void MolarMass_OfEachSugar_AgreesWithTheTable()
    {
        Assert.Equal(Molar("glucose C6H12O6", "g/mol"), MolarMass.Of(Sugar.Glucose));
        Assert.Equal(Molar("fructose C6H12O6", "g/mol"), MolarMass.Of(Sugar.Fructose));
        Assert.Equal(Molar("sucrose C12H22O11", "g/mol"), MolarMass.Of(Sugar.Sucrose));
        Assert.Equal(MolarMass.Water, Molar("water H2O", "g/mol"));
        // Readings are converted in another place with the same molar masses.
        Assert.Equal(UnitConversion.GlucoseMolarMass, MolarMass.Of(Sugar.Glucose));
        Assert.Equal(UnitConversion.SucroseMolarMass, MolarMass.Of(Sugar.Sucrose));
        Assert.Equal(Molar("sucrose/glucose mass factor", "g sucrose per g glucose released by inversion"), decimal.Round(Inversion.SucrosePerGlucose, 8));
    }

    [Theory]
    [InlineData("1 mmol/L glucose", "mg/dL", Sugar.Glucose, ConcentrationUnit.MillimolePerLitre, ConcentrationUnit.MilligramPerDecilitre)]
    [InlineData("1 mmol/L glucose", "g/L", Sugar.Glucose, ConcentrationUnit.MillimolePerLitre, ConcentrationUnit.GramPerLitre)]
    [InlineData("1 g/L glucose", "mmol/L", Sugar.Glucose, ConcentrationUnit.GramPerLitre, ConcentrationUnit.MillimolePerLitre)]
    [InlineData("1 mg/dL glucose", "mmol/L", Sugar.Glucose, ConcentrationUnit.MilligramPerDecilitre, ConcentrationUnit.MillimolePerLitre)]
    [InlineData("1 g/L", "mg/dL", Sugar.Fructose, ConcentrationUnit.GramPerLitre, ConcentrationUnit.MilligramPerDecilitre)]
    [InlineData("1 mg/dL", "g/L", Sugar.Fructose, ConcentrationUnit.MilligramPerDecilitre, ConcentrationUnit.GramPerLitre)]
    [InlineData("1 mmol/L sucrose", "mg/dL", Sugar.Sucrose, ConcentrationUnit.MillimolePerLitre, ConcentrationUnit.MilligramPerDecilitre)]
    [InlineData("1 g/L sucrose", "mmol/L", Sugar.Sucrose, ConcentrationUnit.GramPerLitre, ConcentrationUnit.MillimolePerLitre)]
    public void Concentration_BetweenUnits_AgreesWithTheTable(string quantity, string units, Sugar sugar, ConcentrationUnit from, ConcentrationUnit to)
    {
        var expected = Molar(quantity, units);

        var converted = Concentration.In(to, Concentration.GramsPerLitre(1m, from, sugar), sugar);

        Assert.Equal(expected, decimal.Round(converted, expected.Scale));
    }

    [Fact]
    public void MilligramsPerGram_WhenWrittenOtherwise_AgreesWithTheTable()
    {
        Assert.Equal(Molar("1 mg/g fresh weight", "% FW"), FreshWeight.Percent(1m));
        Assert.Equal(Molar("1 mg/g fresh weight", "mg/kg = ppm (mass)"), FreshWeight.MilligramsPerKilogram(1m));
    }

    [Fact]
    public void SucroseByInversion_OnExamples2And7_KeepsTheSign()
    {
        Assert.Equal(Result("2"), decimal.Round(Usual.MilligramsPerGram(Inversion.Sucrose(0.171m, 0.046m)), 6));
        // 2b uses the customary factor 1.9: the difference to the full factor shows in the sixth decimal only.
        Assert.Equal(Result("2b"), Usual.MilligramsPerGram((0.171m - 0.046m) * 1.9m));
        Assert.Equal(Result("7"), decimal.Round(Usual.MilligramsPerGram(Inversion.Sucrose(0.044m, 0.046m)), 6));
    }

    [Fact]
    public void Dilution_OnExample4_CountsTheSampleToo()
    {
        Assert.Equal(5m, DilutionFactor.OnePlus(4m).Value);
        Assert.Equal(DilutionFactor.OnePlus(4m), DilutionFactor.FromVolumes(2m, 8m));
        Assert.Equal(Result("4"), new Extraction(250m, DilutionFactor.FromVolumes(2m, 8m), 40.0m).MilligramsPerGram(0.0225m));
        Assert.Equal(1m, default(DilutionFactor).Value);
    }

    [Fact]
    public void SolventAdded_OnExample5_CountsTheTissueWater()
    {
        var volume = ExtractVolume.SolventAdded(200m, 50.0m, 21.5m);

        Assert.Equal(239.25m, volume);
        Assert.Equal(Result("5"), new Extraction(volume, DilutionFactor.None, 50.0m).MilligramsPerGram(0.060m));
    }

    [Fact]
    public void SucroseReadDirectly_OnExample8_GivesMilligramsAndPercent()
    {
        var content = new Extraction(250m, DilutionFactor.Of(1m), 48.73m)
            .MilligramsPerGram(Concentration.GramsPerLitre(25m, ConcentrationUnit.MilligramPerDecilitre, Sugar.Sucrose));

        Assert.Equal(Result("8"), decimal.Round(content, 6));
        Assert.Equal(0.128258m, decimal.Round(FreshWeight.Percent(content), 6));
    }

    [Fact]
    public void MilligramsPerGram_OnExample10_GivesBothDuplicates()
    {
        Assert.Equal(0.051896m, decimal.Round(new Extraction(250m, DilutionFactor.None, 50.10m).MilligramsPerGram(0.0104m), 6));
        Assert.Equal(0.056169m, decimal.Round(new Extraction(250m, DilutionFactor.None, 49.85m).MilligramsPerGram(0.0112m), 6));
        Assert.StartsWith("A 0.051896; B 0.056169", ReferenceTable.Load("C_worked_examples.csv").Find("example", "10").Text("result"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ConcentrationUnit.MilligramPerDecilitre, "0.21")]
    [InlineData(ConcentrationUnit.GramPerLitre, "21")]
    [InlineData(ConcentrationUnit.MillimolePerLitre, "3.7833")]
    public void MilligramsPerGram_OnExample11_DependsOnTheUnitOfTheColumn(ConcentrationUnit unit, string expected)
    {
        var content = Usual.MilligramsPerGram(Concentration.GramsPerLitre(4.2m, unit, Sugar.Glucose));

        Assert.Equal(decimal.Parse(expected, CultureInfo.InvariantCulture), decimal.Round(content, 4));
        Assert.Contains(expected, ReferenceTable.Load("C_worked_examples.csv").Find("example", "11").Text("result"), StringComparison.Ordinal);
    }

    [Fact]
    public void ExpressedSap_OnExample13_IsAnApproximation() =>
        Assert.Equal(Result("13"), decimal.Round(FreshWeight.FromExpressedSap(0.9m, 1.03m, 0.7979m), 4));

    [Fact]
    public void GlucoseSucroseRatio_OnExample14_IsTheQuotient() =>
        Assert.Equal(Result("14"), decimal.Round(FreshWeight.GlucoseSucroseRatio(LabResult.Of(0.21m), LabResult.Of(1.1875m)).Value, 6));

    [Fact]
    public void BeforeEnzymeAddition_WhenATenthWasAdded_ScalesUpByATenth() =>
        // Mass balance: 1.00 mL of extract with 0.10 mL of enzyme solution; what reads 0.200 g/L was 0.220 g/L.
        Assert.Equal(0.220m, Concentration.BeforeEnzymeAddition(0.200m, 1.00m, 0.10m));

    [Fact]
    public void Extraction_WhenMassIsZero_SaysWhatItFound()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => new Extraction(250m, DilutionFactor.None, 0m));

        Assert.StartsWith("Found 0 for freshMassGrams, expected a finite number above zero.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Extraction(0m, DilutionFactor.None, 50m));
        Assert.Throws<ArgumentOutOfRangeException>(() => DilutionFactor.Of(0.2m));
        Assert.Throws<ArgumentOutOfRangeException>(() => DilutionFactor.FromVolumes(0m, 8m));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExtractVolume.MadeUpTo(-1m));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExtractVolume.SolventAdded(200m, 50m, 121m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Concentration.GramsPerLitre(1m, (ConcentrationUnit)9, Sugar.Glucose));
        Assert.Throws<ArgumentOutOfRangeException>(() => MolarMass.Of((Sugar)9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Concentration.BeforeEnzymeAddition(1m, 0m, 0.1m));
    }

    private static decimal Molar(string quantity, string units) => ReferenceTable.Load("C_molar_masses.csv").Rows
        .First(row => row.Text("quantity") == quantity && row.Text("units") == units).Exact("value");

    private static decimal Result(string example) => decimal.Parse(
        ReferenceTable.Load("C_worked_examples.csv").Find("example", example).Text("result").Split(' ')[0].TrimEnd(':'),
        CultureInfo.InvariantCulture);
}
