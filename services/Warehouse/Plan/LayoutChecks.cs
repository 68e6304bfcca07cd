namespace LabPipeline.Warehouse.Plan;

/// <summary>Whether every block holds every treatment once, and main plots are whole.</summary>
internal static class LayoutChecks
{
    private const int NamedMost = 5;

    public static IEnumerable<PlanFault> Of(PlanDraft draft)
    {
        var plan = draft.Plan;
        var plots = plan.Plots.Zip(draft.PlotPaths, (plot, path) => (plot, path)).Where(pair => IsWhole(plan, pair.plot)).ToList();
        var isRead = plots.Count == plan.Plots.Count && plots.Count > 0;
        return
        [
            .. Repeated(plan, plots),
            // Faulty plots would each be told of a second time as a treatment that is missing.
            .. isRead && plan.Design.IncompleteReason is null ? Missing(plan) : [],
            .. plan.Design is { Kind: DesignKind.SplitPlot, MainPlotFactor: { } factor } ? OfMainPlots(plan, factor, plots) : [],
        ];
    }

    private static IEnumerable<PlanFault> Repeated(TrialPlan plan, List<(TrialPlot Plot, string Path)> plots)
    {
        foreach (var group in plots.GroupBy(pair => (pair.Plot.Block, Treatment: Describe(plan, pair.Plot))))
        {
            foreach (var (plot, path) in group.Skip(1))
            {
                yield return new PlanFault(
                    path,
                    $"{group.Key.Treatment} in block '{plot.Block}' again, as in plot '{group.First().Plot.Code}'",
                    "every treatment once a block",
                    "Correct the level or the block.");
            }
        }
    }

    private static IEnumerable<PlanFault> Missing(TrialPlan plan)
    {
        var all = Combinations(plan.Design.Factors);
        foreach (var block in plan.Design.Blocks)
        {
            var present = plan.Plots.Where(plot => plot.Block == block).Select(plot => Describe(plan, plot)).ToHashSet(StringComparer.Ordinal);
            var missing = all.Where(treatment => !present.Contains(treatment)).ToList();
            if (missing.Count > 0)
            {
                var named = string.Join(" and ", missing.Take(NamedMost)) + (missing.Count > NamedMost ? $" and {missing.Count - NamedMost} more" : "");
                yield return new PlanFault(
                    "plots", $"block '{block}' without {named}", "every treatment in every block", "Add the plots, or state in design.incomplete why they are missing.");
            }
        }
    }

    private static IEnumerable<PlanFault> OfMainPlots(TrialPlan plan, string factor, List<(TrialPlot Plot, string Path)> plots)
    {
        var placed = plots.Where(pair => pair.Plot.MainPlot is { Length: > 0 } && pair.Plot.Levels.ContainsKey(factor)).ToList();
        foreach (var group in placed.GroupBy(pair => pair.Plot.MainPlot!, StringComparer.Ordinal))
        {
            var (first, _) = group.First();
            foreach (var (plot, path) in group.Where(pair => pair.Plot.Block != first.Block || pair.Plot.Levels[factor] != first.Levels[factor]))
            {
                yield return new PlanFault(
                    path,
                    $"main plot '{group.Key}' with {factor} {plot.Levels[factor]} in block '{plot.Block}'",
                    $"{factor} {first.Levels[factor]} in block '{first.Block}', as in plot '{first.Code}'",
                    "Correct the main plot; its code must differ from block to block.");
            }
        }

        foreach (var group in placed.GroupBy(pair => (pair.Plot.Block, Level: pair.Plot.Levels[factor])))
        {
            var mainPlots = group.Select(pair => pair.Plot.MainPlot!).Distinct(StringComparer.Ordinal).ToList();
            if (mainPlots.Count > 1)
            {
                yield return new PlanFault(
                    "plots",
                    $"{factor} {group.Key.Level} on the main plots {string.Join(", ", mainPlots)} of block '{group.Key.Block}'",
                    "each level on one main plot a block",
                    "Correct the main plots; a block with repeated main plots is two blocks.");
            }
        }
    }

    private static bool IsWhole(TrialPlan plan, TrialPlot plot) =>
        plan.Design.Blocks.Contains(plot.Block, StringComparer.Ordinal)
        && plan.Design.Factors.All(factor => plot.Levels.TryGetValue(factor.Name, out var level) && factor.Levels.Contains(level, StringComparer.Ordinal));

    private static string Describe(TrialPlan plan, TrialPlot plot) =>
        string.Join(", ", plan.Design.Factors.Select(factor => factor.Describe(plot.Levels[factor.Name])));

    private static List<string> Combinations(IReadOnlyList<TrialFactor> factors) =>
        factors.Aggregate(
            new List<string> { "" },
            (heads, factor) =>
            [
                .. heads.SelectMany(head => factor.Levels.Select(level => head.Length == 0 ? factor.Describe(level) : $"{head}, {factor.Describe(level)}")),
            ]);
}
