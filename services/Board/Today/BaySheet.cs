namespace LabPipeline.Board.Today;

/// <summary>One bay on a pull day: which of its plots have arrived whole, in part or not at all.</summary>
/// <param name="Bay">The bay's code.</param>
/// <param name="Plots">Its plots in their order.</param>
public sealed record BaySheet(string Bay, IReadOnlyList<PlotSheet> Plots)
{
    public int Whole => Plots.Count(plot => plot.Missing.Count == 0);

    public int NotArrived => Plots.Count(plot => plot.HasNothing);

    public IReadOnlyList<PlotSheet> Unfinished => [.. Plots.Where(plot => plot.Missing.Count > 0)];

    /// <summary>The bays behind <paramref name="needs"/>, in their order.</summary>
    public static IReadOnlyList<BaySheet> Of(IEnumerable<SampleNeed> needs) =>
    [
        .. needs.GroupBy(need => need.BayCode).Select(bay => new BaySheet(
            bay.Key,
            [
                .. bay.GroupBy(need => need.Barcode).Select(sample => new PlotSheet(
                    sample.First().PlotCode,
                    sample.First().CloneName,
                    sample.First().Treatment,
                    sample.Key,
                    [.. sample])),
            ])),
    ];
}
