using System.Globalization;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>Turns the order of treatments in each block into numbered plots: 101, 102 … in the first block, 201 … in the second.</summary>
/// <remarks>
/// Whole blocks go to one bay, in equal shares, so that a difference between bays falls into blocks. Main plots are W11, W12 …: a letter first, because
/// spreadsheets turn 1-1 into a date.
/// </remarks>
internal sealed class PlotNumbering(IReadOnlyList<string> blocks, IReadOnlyList<string> bays, IReadOnlyList<TrialFactor> factors, string? mainPlotFactor)
{
    private const int SmallBlock = 99;

    /// <summary>Puts the treatments of a unit in order; told which unit it is.</summary>
    public delegate IReadOnlyList<IReadOnlyDictionary<string, string>> UnitOrder(IReadOnlyList<IReadOnlyDictionary<string, string>> treatments, string unit);

    public IReadOnlyList<TrialPlot> Number(UnitOrder order) =>
        [.. blocks.SelectMany((block, index) => mainPlotFactor is null ? Whole(block, index, order) : Split(block, index, order))];

    private IEnumerable<TrialPlot> Whole(string block, int index, UnitOrder order) =>
        order(Crossed(factors), UnitOf(block)).Select((levels, at) => new TrialPlot(CodeOf(index, at), block, null, BayOf(index), levels));

    private IEnumerable<TrialPlot> Split(string block, int index, UnitOrder order)
    {
        var within = factors.Where(factor => factor.Name != mainPlotFactor).ToList();
        var subplots = Crossed(within);
        var mainPlots = order(Crossed([.. factors.Where(factor => factor.Name == mainPlotFactor)]), UnitOf(block));
        return mainPlots.SelectMany((main, number) => order(subplots, $"{UnitOf(block)}/{main.Values.First()}").Select((levels, at) => new TrialPlot(
            CodeOf(index, (number * subplots.Count) + at),
            block,
            string.Create(CultureInfo.InvariantCulture, $"W{index + 1}{number + 1}"),
            BayOf(index),
            factors.ToDictionary(factor => factor.Name, factor => levels.TryGetValue(factor.Name, out var level) ? level : main[factor.Name], StringComparer.Ordinal))));
    }

    private static string UnitOf(string block) => $"block {block}";

    private string BayOf(int block) => bays[block * bays.Count / blocks.Count];

    private string CodeOf(int block, int at)
    {
        var perBlock = factors.Aggregate(1, (product, factor) => product * factor.Levels.Count);
        return (((block + 1) * (perBlock > SmallBlock ? 1000 : 100)) + at + 1).ToString(CultureInfo.InvariantCulture);
    }

    private static IReadOnlyList<IReadOnlyDictionary<string, string>> Crossed(IReadOnlyList<TrialFactor> factors) => factors.Aggregate(
        (IReadOnlyList<IReadOnlyDictionary<string, string>>)[new Dictionary<string, string>(StringComparer.Ordinal)],
        (heads, factor) => [.. heads.SelectMany(head => factor.Levels.Select(level => new Dictionary<string, string>(head, StringComparer.Ordinal) { [factor.Name] = level }))]);
}
