using LabPipeline.Science.Quantities;

namespace LabPipeline.Station.Commands;

/// <summary>Units as people read them: a pure number shows none.</summary>
internal static class UnitText
{
    public static string Of(string unit) => unit == Unit.One.Symbol ? "" : unit;

    public static string With(string value, string unit) => unit == Unit.One.Symbol ? value : $"{value} {unit}";
}
