namespace LabPipeline.Warehouse.Plan;

/// <summary>What can be wrong with a single plot.</summary>
internal static class PlotChecks
{
    public static IEnumerable<PlanFault> Of(PlanDraft draft)
    {
        var plan = draft.Plan;
        foreach (var (plot, path) in plan.Plots.Zip(draft.PlotPaths))
        {
            foreach (var fault in OfPlaces(plan, plot, path).Concat(OfLevels(plan.Design, plot, path)))
            {
                yield return fault;
            }
        }

        if (plan.Plots.Count > PlanSamples.MostPlots)
        {
            yield return new PlanFault(
                "plots", $"{plan.Plots.Count} plots", $"at most {PlanSamples.MostPlots}: a pull has a thousand running numbers", "Split the trial in two with marks of their own.");
        }
    }

    private static IEnumerable<PlanFault> OfPlaces(TrialPlan plan, TrialPlot plot, string path)
    {
        if (plot.Block.Length > 0 && plan.Design.Blocks.Count > 0 && !plan.Design.Blocks.Contains(plot.Block, StringComparer.Ordinal))
        {
            yield return new PlanFault(path, $"block '{plot.Block}'", $"one of {string.Join(", ", plan.Design.Blocks)}", "Correct the block or add it to design.blocks.");
        }

        if (plot.BayCode.Length > 0 && plan.Bays.Count > 0 && plan.Bays.All(bay => bay.Code != plot.BayCode))
        {
            yield return new PlanFault(path, $"bay '{plot.BayCode}'", $"one of {string.Join(", ", plan.Bays.Select(bay => bay.Code))}", "Correct the bay or add it to bays.");
        }

        if (plan.Design.Kind == DesignKind.SplitPlot && plot.MainPlot is null)
        {
            yield return new PlanFault(path, "no main plot", "the main plot it lies in, as the design is a split-plot", "Add it.");
        }

        if (plan.Design.Kind != DesignKind.SplitPlot && plot.MainPlot is not null)
        {
            yield return new PlanFault(path, $"main plot '{plot.MainPlot}'", $"none for a {DesignNames.Of(plan.Design.Kind)}", "Remove it, or name the design split-plot.");
        }
    }

    private static IEnumerable<PlanFault> OfLevels(TrialDesign design, TrialPlot plot, string path)
    {
        foreach (var factor in design.Factors.Where(factor => factor.Name.Length > 0))
        {
            if (!plot.Levels.TryGetValue(factor.Name, out var level))
            {
                yield return new PlanFault(path, $"no level of '{factor.Name}'", $"one of {string.Join(", ", factor.Levels)}", "Add the level of this factor.");
            }
            else if (level.Length > 0 && factor.Levels.Count > 0 && !factor.Levels.Contains(level, StringComparer.Ordinal))
            {
                yield return new PlanFault(path, $"'{level}' for '{factor.Name}'", $"one of {string.Join(", ", factor.Levels)}", "Correct the level or add it to the factor.");
            }
        }

        foreach (var unknown in plot.Levels.Keys.Where(name => design.Factors.Count > 0 && design.Factors.All(factor => factor.Name != name)))
        {
            yield return new PlanFault(path, $"the factor '{unknown}'", $"only {string.Join(", ", design.Factors.Select(factor => factor.Name))}", "Remove it or add it to design.factors.");
        }
    }
}
