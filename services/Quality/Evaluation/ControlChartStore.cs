using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads control charts: one point a run.</summary>
public sealed class ControlChartStore
{
    private static readonly SqlText ListCharts = SqlText.Load<ControlChartStore>("list-control-charts");
    private static readonly SqlText ListPoints = SqlText.Load<ControlChartStore>("list-chart-points");

    /// <summary>Every chart the warehouse holds points of, with limits in force for the newest run.</summary>
    public static async Task<IReadOnlyList<ControlChartEvidence>> ListAsync(WarehouseSession session)
    {
        var limits = await ControlEvidenceStore.LoadLimitsAsync(session).ConfigureAwait(false);
        var charts = new List<ControlChartEvidence>();
        foreach (var name in await ListNamesAsync(session).ConfigureAwait(false))
        {
            var openings = await ListOpeningsAsync(session, name.Instrument, name.Material, name.QuantityId, DateTimeOffset.MinValue).ConfigureAwait(false);
            charts.Add(Chart(name.Instrument, name.Material, name.QuantityId, openings, limits));
        }

        return charts;
    }

    /// <summary>The names of every chart the warehouse holds points of.</summary>
    public static async Task<IReadOnlyList<ControlChartName>> ListNamesAsync(WarehouseSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var names = await session.QueryAsync<ControlChartName>(ListCharts).ConfigureAwait(false);
        return [.. names.Where(name => ControlReview.IsCharted(name.Quantity))];
    }

    /// <summary>Every control of a chart with its run; only the opening one of each run is a point of the chart.</summary>
    public static async Task<IReadOnlyList<(string Run, ControlPoint Point)>> ListPointsAsync(WarehouseSession session, ControlChartName chart)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(chart);
        return await LoadPointsAsync(session, chart.Instrument, chart.Material, chart.QuantityId, DateTimeOffset.MinValue).ConfigureAwait(false);
    }

    /// <summary>The opening control of each run from an instant on, in time order.</summary>
    public static async Task<IReadOnlyList<(string Run, ControlPoint Point)>> ListOpeningsAsync(
        WarehouseSession session, string instrument, string material, int quantityId, DateTimeOffset since) =>
        ControlReview.Openings(await LoadPointsAsync(session, instrument, material, quantityId, since).ConfigureAwait(false));

    /// <summary>The charts that controls of a run belong to; points only where frozen limits say what they are held against.</summary>
    internal static async Task<IReadOnlyList<ControlChartEvidence>> LoadAsync(WarehouseSession session, ControlEvidence run, ControlLimitBook limits)
    {
        var charts = new List<ControlChartEvidence>();
        foreach (var chart in run.Points.Where(point => ControlReview.IsCharted(point.Quantity)).GroupBy(point => (point.Material, point.QuantityId)).OrderBy(chart => chart.Key))
        {
            var inForce = limits.Find(run.Instrument, chart.Key.Material, chart.Key.QuantityId, chart.Max(point => point.MeasuredAt));
            IReadOnlyList<(string, ControlPoint)> openings = inForce is { Kind: ControlLimitKinds.Frozen }
                ? await ListOpeningsAsync(session, run.Instrument, chart.Key.Material, chart.Key.QuantityId, inForce.InForceFrom).ConfigureAwait(false)
                : [];
            charts.Add(Chart(run.Instrument, chart.Key.Material, chart.Key.QuantityId, openings, limits, inForce));
        }

        return charts;
    }

    private static ControlChartEvidence Chart(
        string instrument, string material, int quantityId, IReadOnlyList<(string Run, ControlPoint Point)> openings, ControlLimitBook limits, ControlLimitRow? inForce = null) => new()
        {
            Instrument = instrument,
            Material = material,
            Quantity = QuantityCatalogue.Get(quantityId),
            Limits = inForce ?? limits.Find(instrument, material, quantityId, openings.Count == 0 ? null : openings[^1].Point.MeasuredAt),
            Openings = openings,
        };

    private static async Task<IReadOnlyList<(string Run, ControlPoint Point)>> LoadPointsAsync(
        WarehouseSession session, string instrument, string material, int quantityId, DateTimeOffset since)
    {
        var rows = await session.QueryAsync<PointRow>(ListPoints, new { instrument, material, quantityId, since }).ConfigureAwait(false);
        return [.. rows.Select(row => (row.Run, row.PointOf(material, quantityId)))];
    }

    private sealed class PointRow
    {
        public string Run { get; init; } = "";

        public string RowKey { get; init; } = "";

        public decimal Value { get; init; }

        public DateTimeOffset? MeasuredAt { get; init; }

        public int Line { get; init; }

        public ControlPoint PointOf(string material, int quantityId) => new()
        {
            Material = material,
            QuantityId = quantityId,
            RowKey = RowKey,
            Value = Value,
            MeasuredAt = MeasuredAt,
            Line = Line,
        };
    }
}
