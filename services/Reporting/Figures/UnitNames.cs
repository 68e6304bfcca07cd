using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Figures;

/// <summary>Units as a page prints them.</summary>
internal static class UnitNames
{
    /// <summary>A quantity as a sentence names it; the dictionary's name has underscores for blanks.</summary>
    public static string Spoken(Quantity quantity) => quantity.Name.Replace('_', ' ');

    public static string Of(Unit unit) => unit.Symbol == "1" ? "" : unit.Symbol;
}
