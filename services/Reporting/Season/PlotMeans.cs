using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Reporting.Season;

/// <summary>Plot means of one response: the unit of analysis.</summary>
internal sealed class PlotMeans
{
    private readonly SeasonData _data;
    private readonly List<PlotPull> _cells;

    /// <param name="data">The season.</param>
    /// <param name="response">What is analysed.</param>
    /// <param name="withDoubtful">Whether results in doubt count.</param>
    public PlotMeans(SeasonData data, Response response, bool withDoubtful = true)
    {
        _data = data;
        Response = response;
        var results = data.Results.Where(result => result.QuantityId == response.Quantity.Id && (withDoubtful || !result.InDoubt)).ToDictionary(result => result.Barcode);
        var plots = data.Plots.ToDictionary(plot => plot.PlotCode);
        _cells =
        [
            .. data.Samples.Where(sample => results.ContainsKey(sample.Barcode))
                .GroupBy(sample => (sample.PullNo, sample.PlotCode))
                .OrderBy(group => group.Key.PullNo).ThenBy(group => group.Key.PlotCode, StringComparer.Ordinal)
                .Select(group => new PlotPull(plots[group.Key.PlotCode], group.Key.PullNo,
                    (double)group.Average(sample => results[sample.Barcode].Value), group.All(sample => results[sample.Barcode].BelowLimit))
                {
                    InDoubt = group.Any(sample => results[sample.Barcode].InDoubt),
                }),
        ];
    }

    public Response Response { get; }

    public IReadOnlyList<PlotPull> All => _cells;

    /// <summary>Pulls with any value.</summary>
    public IReadOnlyList<int> Pulls => [.. _cells.Select(cell => cell.PullNo).Distinct()];

    public IReadOnlyList<PlotPull> OfPull(int pull) => [.. _cells.Where(cell => cell.PullNo == pull)];

    /// <summary>Rows for the statistics; a value below the quantitation limit enters as the limit and is counted beside the table.</summary>
    /// <param name="model">The trial's model.</param>
    /// <param name="pulls">Pulls to take.</param>
    public IReadOnlyList<PlotMean> Rows(TrialModel model, IReadOnlyList<int> pulls) =>
    [
        .. _cells.Where(cell => pulls.Contains(cell.PullNo)).Select(cell => new PlotMean(
            cell.Plot.Block,
            cell.Plot.PlotCode,
            model.Factors.ToDictionary(factor => factor.Name, factor => cell.Plot.Levels[factor.Name]),
            cell.Value / Response.Divisor,
            cell.Plot.MainPlot is { } main ? $"{cell.Plot.Block}/{main}" : null,
            pulls.Count < 2 ? null : TrialModel.NameOf(cell.PullNo))),
    ];

    public int PlannedPlots => _data.Plots.Count;
}
