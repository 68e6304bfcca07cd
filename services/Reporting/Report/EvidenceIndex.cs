using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Report;

/// <summary>Names the groups of samples behind the means of a report: one for each treatment combination at each pull, such as <c>E03-005</c>.</summary>
/// <remarks>Made from the plan alone, so the same name means the same plots in every report of the trial.</remarks>
internal sealed class EvidenceIndex
{
    private readonly Dictionary<(int Pull, string Cell), EvidenceGroup> _groups;

    public EvidenceIndex(SeasonData data)
    {
        var factors = data.Factors().ToList();
        string CellOf(PlotFact plot) => string.Join(":", factors.Select(factor => plot.Levels[factor.Key]));
        var position = data.Levels.ToDictionary(level => (level.Factor, level.Level), level => level.Position);
        var plots = data.Plots.ToDictionary(plot => plot.PlotCode);
        var cells = data.Plots.OrderBy(plot => string.Concat(factors.Select(factor => $"{position[(factor.Key, plot.Levels[factor.Key])]:D6}")), StringComparer.Ordinal)
            .Select(CellOf).Distinct().ToList();
        Groups =
        [
            .. data.Samples.GroupBy(sample => (sample.PullNo, Cell: CellOf(plots[sample.PlotCode])))
                .Select(group => new EvidenceGroup(FormattableString.Invariant($"E{group.Key.PullNo:D2}-{cells.IndexOf(group.Key.Cell) + 1:D3}"), group.Key.PullNo, group.Key.Cell, [.. group]))
                .OrderBy(group => group.Id, StringComparer.Ordinal),
        ];
        _groups = Groups.ToDictionary(group => (group.PullNo, group.Cell));
        Single = [.. factors.Select((factor, index) => (factor, index)).Where(pair => pair.factor.Count() == 1).Select(pair => pair.index)];
        One = [.. factors.Select(factor => factor.First().Level)];
    }

    public IReadOnlyList<EvidenceGroup> Groups { get; }

    private IReadOnlyList<int> Single { get; }

    private IReadOnlyList<string> One { get; }

    /// <param name="pull">Number of the pull.</param>
    /// <param name="label">Label of a mean of all factors with more than one level.</param>
    public string? Find(int pull, string label)
    {
        var levels = label.Split(':').ToList();
        foreach (var index in Single.Where(_ => levels.Count < One.Count))
        {
            levels.Insert(index, One[index]);
        }

        return _groups.GetValueOrDefault((pull, string.Join(":", levels)))?.Id;
    }
}
