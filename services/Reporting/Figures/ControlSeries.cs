using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Reporting.Figures;

/// <summary>Control results of one instrument, material and quantity in order of time, with the laboratory's limits and their history.</summary>
/// <param name="Instrument">The instrument.</param>
/// <param name="Material">The control.</param>
/// <param name="Quantity">What was measured.</param>
/// <param name="Results">In order of time.</param>
/// <param name="Limits">Every version the laboratory decided on; empty where there is none.</param>
internal sealed record ControlSeries(string Instrument, string Material, Quantity Quantity, IReadOnlyList<ControlFact> Results, IReadOnlyList<ControlLimitRow> Limits)
{
    public int Beyond => Results.Count(IsBeyond);

    /// <summary>Results held against no limits, because none were in force.</summary>
    public int Unjudged => Results.Count(fact => LimitsOf(fact) is null);

    /// <summary>Series that vary or have limits: a constant dilution or bath temperature has no chart.</summary>
    public static IReadOnlyList<ControlSeries> Of(SeasonData data)
    {
        var limits = data.ControlLimits.ToLookup(row => (row.Instrument, row.Material, row.QuantityId));
        return
        [
            .. data.Controls.GroupBy(fact => (fact.Instrument, fact.Material, fact.QuantityId))
                .Select(group => new ControlSeries(
                    group.Key.Instrument,
                    group.Key.Material,
                    QuantityCatalogue.Get(group.Key.QuantityId),
                    [.. group.OrderBy(fact => fact.MeasuredAt ?? DateTimeOffset.MinValue).ThenBy(fact => fact.FileId).ThenBy(fact => fact.Line)],
                    [.. limits[group.Key].OrderBy(row => row.InForceFrom).ThenBy(row => row.Version)]))
                .Where(series => series.Limits.Count > 0 || series.Results.Select(fact => fact.Value).Distinct().Count() > 1),
        ];
    }

    /// <summary>Those in force when the control was measured, as quality control holds it against them.</summary>
    public ControlLimitRow? LimitsOf(ControlFact fact) => Limits.LastOrDefault(row => fact.MeasuredAt is null || row.InForceFrom <= fact.MeasuredAt);

    public bool IsBeyond(ControlFact fact) => LimitsOf(fact) is { } limits && (fact.Value < limits.Lower || fact.Value > limits.Upper);
}
