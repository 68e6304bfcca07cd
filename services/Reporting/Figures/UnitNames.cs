using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Figures;

/// <summary>Units as a page prints them.</summary>
internal static class UnitNames
{
    // The coordinates' own letters, as Hunter and the CIE write them.
    private static readonly (string Plain, string Written)[] Coordinates =
    [
        ("hunter l", "Hunter L"), ("hunter a", "Hunter a"), ("hunter b", "Hunter b"),
        ("cielab l", "CIELAB L*"), ("cielab a", "CIELAB a*"), ("cielab b", "CIELAB b*"),
    ];

    /// <summary>A quantity as a sentence names it; the dictionary's name has underscores for blanks and no capitals.</summary>
    public static string Spoken(Quantity quantity) => Coordinates.Aggregate(
        quantity.Name.Replace('_', ' '), (name, coordinate) => name.Replace(coordinate.Plain, coordinate.Written, StringComparison.Ordinal));

    public static string Of(Unit unit) => unit.Symbol == "1" ? "" : unit.Symbol;
}
