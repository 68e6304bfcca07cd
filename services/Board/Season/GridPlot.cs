namespace LabPipeline.Board.Season;

/// <summary>One plot over all pulls.</summary>
/// <param name="PlotCode">The plot.</param>
/// <param name="CloneName">Its clone.</param>
/// <param name="Treatment">Its treatment.</param>
/// <param name="Cells">By number of the pull.</param>
public sealed record GridPlot(string PlotCode, string CloneName, string Treatment, IReadOnlyDictionary<int, GridCell> Cells)
{
    /// <summary>The plots behind <paramref name="rows"/>, in their order.</summary>
    public static IReadOnlyList<GridPlot> Of(IReadOnlyList<GridRow> rows) =>
    [
        .. rows.GroupBy(row => row.PlotCode).Select(plot => new GridPlot(
            plot.Key,
            plot.First().CloneName,
            plot.First().Treatment,
            plot.GroupBy(row => row.PullNo).Select(pull => GridCell.Of([.. pull])).ToDictionary(cell => cell.PullNo))),
    ];
}
