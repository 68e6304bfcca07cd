namespace LabPipeline.Science.Quantities;

/// <summary>Brings a reading from the unit an instrument reports to the quantity's canonical unit, in decimal.</summary>
/// <remarks>
/// Factors are exact definitions (1 lb = 453.59237 g, 1 oz = 28.349523125 g, degC = (degF - 32) x 5/9) except mmol/L, which uses
/// molar masses from the conventional atomic weights C 12.011, H 1.008, O 15.999: glucose 180.156 g/mol, sucrose 342.297 g/mol.
/// Results are rounded half to even at 12 decimals, the precision of the warehouse.
/// </remarks>
public static class UnitConversion
{
    /// <summary>Decimals kept of a converted value.</summary>
    public const int StoredDecimals = 12;

    /// <summary>Molar mass of glucose in g/mol.</summary>
    public const decimal GlucoseMolarMass = 180.156m;

    /// <summary>Molar mass of sucrose in g/mol.</summary>
    public const decimal SucroseMolarMass = 342.297m;

    private static readonly Dictionary<string, Unit> Spellings = new(StringComparer.Ordinal)
    {
        ["g/L"] = Unit.GramPerLitre,
        ["g/l"] = Unit.GramPerLitre,
        ["mg/dL"] = Unit.MilligramPerDecilitre,
        ["mg/dl"] = Unit.MilligramPerDecilitre,
        ["mmol/L"] = Unit.MillimolePerLitre,
        ["mmol/l"] = Unit.MillimolePerLitre,
        ["mM"] = Unit.MillimolePerLitre,
        ["mg/g"] = Unit.MilligramPerGram,
        ["g"] = Unit.Gram,
        ["kg"] = Unit.Kilogram,
        ["mg"] = Unit.Milligram,
        ["lb"] = Unit.Pound,
        ["oz"] = Unit.Ounce,
        ["mL"] = Unit.Millilitre,
        ["ml"] = Unit.Millilitre,
        ["L"] = Unit.Litre,
        ["l"] = Unit.Litre,
        ["degC"] = Unit.Celsius,
        ["°C"] = Unit.Celsius,
        ["degF"] = Unit.Fahrenheit,
        ["°F"] = Unit.Fahrenheit,
        ["s"] = Unit.Second,
        ["min"] = Unit.Minute,
        ["%"] = Unit.Percent,
        ["1"] = Unit.One,
    };

    /// <summary>The spellings a profile may use.</summary>
    public static IReadOnlyCollection<string> KnownSpellings => Spellings.Keys;

    /// <summary>The unit written as <paramref name="text"/>, or null when it is not one we know; nothing is guessed.</summary>
    public static Unit? Find(string text) => Spellings.GetValueOrDefault(text);

    /// <summary>Whether values in <paramref name="from"/> can become values of <paramref name="quantity"/>.</summary>
    public static bool CanConvert(Unit from, Quantity quantity) => Convert(1m, from, quantity) is not null;

    /// <summary><paramref name="value"/> in the canonical unit of <paramref name="quantity"/>; null when the units do not belong together.</summary>
    public static decimal? Convert(decimal value, Unit from, Quantity quantity)
    {
        if (from == quantity.Unit)
        {
            return value;
        }

        var converted = (from.Symbol, quantity.Unit.Symbol) switch
        {
            ("mg/dL", "g/L") => value * 0.01m,
            ("mmol/L", "g/L") => value * MolarMassOf(quantity) / 1000m,
            ("kg", "g") => value * 1000m,
            ("mg", "g") => value / 1000m,
            ("lb", "g") => value * 453.59237m,
            ("oz", "g") => value * 28.349523125m,
            ("L", "mL") => value * 1000m,
            ("degF", "degC") => (value - 32m) * 5m / 9m,
            ("min", "s") => value * 60m,
            _ => (decimal?)null,
        };
        return converted is { } exact ? decimal.Round(exact, StoredDecimals, MidpointRounding.ToEven) : null;
    }

    private static decimal MolarMassOf(Quantity quantity) =>
        quantity == QuantityCatalogue.SucroseInExtract ? SucroseMolarMass : GlucoseMolarMass;
}
