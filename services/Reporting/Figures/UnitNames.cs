using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Figures;

/// <summary>Units as a page prints them.</summary>
internal static class UnitNames
{
    public static string Of(Unit unit) => unit.Symbol == "1" ? "" : unit.Symbol;
}
