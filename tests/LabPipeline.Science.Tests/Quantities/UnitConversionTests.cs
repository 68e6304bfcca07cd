using LabPipeline.Science.Quantities;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Quantities;

/// <summary>Factors against I_conversions.csv and I_temperature.csv (exact definitions) and C_molar_masses.csv (IUPAC atomic weights).</summary>
public sealed class UnitConversionTests
{
    [Theory]
    [InlineData("1 lb", "lb")]
    [InlineData("1 oz (avoirdupois)", "oz")]
    public void Convert_WhenMassIsCustomary_UsesTheExactDefinition(string row, string unit)
    {
        var expected = ReferenceTable.Load("I_conversions.csv").Find("from", row).Exact("value");

        Assert.Equal(expected, UnitConversion.Convert(1m, UnitConversion.Find(unit)!, QuantityCatalogue.WeightInAir));
    }

    [Fact]
    public void Convert_WhenTemperatureIsFahrenheit_AgreesWithTheTable()
    {
        foreach (var row in ReferenceTable.Load("I_temperature.csv").Rows)
        {
            var celsius = UnitConversion.Convert(row.Exact("F"), Unit.Fahrenheit, QuantityCatalogue.OilStart);

            Assert.Equal(row.Exact("C"), decimal.Round(celsius!.Value, 4));
        }
    }

    [Fact]
    public void Convert_WhenGlucoseIsInMillimoles_UsesItsMolarMass()
    {
        var expected = ReferenceTable.Load("C_molar_masses.csv").Rows
            .Single(row => row.Text("quantity") == "1 mmol/L glucose" && row.Text("units") == "g/L").Exact("value");

        Assert.Equal(expected, UnitConversion.Convert(1m, Unit.MillimolePerLitre, QuantityCatalogue.GlucoseInExtract));
    }

    [Fact]
    public void Convert_WhenUnitsDoNotBelongTogether_GivesNothing() =>
        Assert.Null(UnitConversion.Convert(1m, Unit.Gram, QuantityCatalogue.GlucoseInExtract));

    [Fact]
    public void Find_WhenSpellingIsUnknown_GuessesNothing() => Assert.Null(UnitConversion.Find("gr"));

    [Fact]
    public void Catalogue_Identifiers_AreUnique() =>
        Assert.Equal(QuantityCatalogue.All.Count, QuantityCatalogue.All.Select(quantity => quantity.Id).Distinct().Count());
}
