using System.Globalization;
using LabPipeline.Science.Units;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Units;

/// <summary>Exact definitions against I_conversions.csv and I_temperature.csv; masses of readings are tested beside <c>UnitConversion</c>.</summary>
public sealed class ConversionTests
{
    [Fact]
    public void Factors_AgreeWithTheTable() => Assert.All(
        new (string Row, decimal Factor)[]
        {
            ("1 cwt (US) = 100 lb", Conversion.KilogramsPerHundredweight),
            ("1 inch", Conversion.MillimetresPerInch),
            ("1/20 inch", Conversion.MillimetresPerInch / 20m),
            ("0.050 in slice", 0.050m * Conversion.MillimetresPerInch),
            ("0.055 in slice", 0.055m * Conversion.MillimetresPerInch),
            ("1 7/8 in", 1.875m * Conversion.MillimetresPerInch),
            ("1 3/4 in", 1.75m * Conversion.MillimetresPerInch),
            ("1 acre", Conversion.SquareMetresPerAcre),
            ("1 ha", Conversion.AcresPerHectare),
            ("1 lb/acre", Conversion.KilogramsPerHectarePerPoundPerAcre),
            ("1 cwt/acre (US)", Conversion.KilogramsPerHectarePerHundredweightPerAcre),
            ("1 US gallon", Conversion.LitresPerGallon),
        },
        // Below one unit of the last digit, not half: the table cuts its per-acre rows (1.12085115... stands there as 1.1208511).
        pair => Assert.InRange((pair.Factor - Value(pair.Row)) / LastDigit(Value(pair.Row)), -0.999m, 0.999m));

    [Fact]
    public void LongHundredweight_StandsInTheNoteOfTheShortOne() => Assert.Contains(
        Conversion.KilogramsPerLongHundredweight.ToString("0.00000000", CultureInfo.InvariantCulture),
        ReferenceTable.Load("I_conversions.csv").Find("from", "1 cwt (US) = 100 lb").Text("note"),
        StringComparison.Ordinal);

    [Fact]
    public void Temperature_OnTheTable_AgreesToFourDecimalsAndBack()
    {
        foreach (var row in ReferenceTable.Load("I_temperature.csv").Rows)
        {
            var celsius = Temperature.CelsiusFromFahrenheit(row.Exact("F"));

            Assert.Equal(row.Exact("C"), decimal.Round(celsius, 4));
            Assert.Equal(row.Exact("K"), decimal.Round(Temperature.KelvinFromCelsius(celsius), 4));
            Assert.Equal(row.Exact("F"), decimal.Round(Temperature.FahrenheitFromCelsius(celsius), 20));
        }
    }

    [Fact]
    public void Difference_OfFiveFahrenheit_HasNoOffset() =>
        Assert.Equal(Value("+-5 F"), decimal.Round(Temperature.KelvinDifferenceFromFahrenheit(5m), 4));

    [Fact]
    public void Temperature_BelowAbsoluteZero_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.CelsiusFromFahrenheit(-460m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.KelvinFromCelsius(-273.16m));
    }

    private static decimal LastDigit(decimal value) => new(1, 0, 0, false, value.Scale);

    private static decimal Value(string from) => ReferenceTable.Load("I_conversions.csv").Find("from", from).Exact("value");
}
