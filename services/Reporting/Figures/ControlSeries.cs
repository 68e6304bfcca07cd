using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.ControlCharts;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Figures;

/// <summary>Control results of one instrument, material and quantity, with their limits.</summary>
internal sealed record ControlSeries(string Instrument, string Material, Quantity Quantity, IReadOnlyList<ControlFact> Results, ControlLimits Limits)
{
    public int Beyond => Results.Count(fact => Limits.IsOut(fact.Value));

}
