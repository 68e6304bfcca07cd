namespace LabPipeline.Science.Statistics.Designs;

/// <summary>Analyses plot means by the design that was stated.</summary>
public static class FieldTrialAnalysis
{
    /// <param name="design">The design of the plan.</param>
    /// <param name="plots">One value a plot (and pull); missing plots and pulls left out.</param>
    /// <exception cref="ArgumentException">Rows that contradict the design, two values for one plot and pull, one block, a value that is not finite.</exception>
    public static FieldTrialResult Analyse(FieldTrialDesign design, IReadOnlyList<PlotMean> plots)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(plots);
        var rows = new FieldTrialRows(design, plots);
        if (design.Pulls.Count == 0)
        {
            return new FieldTrialResult(Describe(design), [PullAnalyser.Analyse(design, rows, null)], null);
        }

        // The season's model takes about as long as all pulls together, and neither needs the other.
        var season = rows.PullsTaken.Count > 1 ? Task.Run(() => RepeatedAnalyser.Analyse(design, rows)) : null;
        List<PullAnalysis> pulls = [.. rows.PullsTaken.Where(pull => rows.Select(pull).Count > 1).Select(pull => PullAnalyser.Analyse(design, rows, pull))];
        return new FieldTrialResult(Describe(design), pulls, season?.GetAwaiter().GetResult());
    }

    /// <summary>The tables over all pulls alone; null where fewer than two pulls were taken.</summary>
    /// <param name="design">The design of the plan, with its pulls.</param>
    /// <param name="plots">One value a plot and pull; missing plots and pulls left out.</param>
    /// <exception cref="ArgumentException">As for <see cref="Analyse"/>.</exception>
    public static RepeatedAnalysis? AnalyseSeason(FieldTrialDesign design, IReadOnlyList<PlotMean> plots)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(plots);
        var rows = new FieldTrialRows(design, plots);
        return rows.PullsTaken.Count > 1 ? RepeatedAnalyser.Analyse(design, rows) : null;
    }

    private static string Describe(FieldTrialDesign design)
    {
        var treatments = string.Join(" x ", design.Factors.Select(factor => $"{factor.Name} ({factor.Levels.Count})"));
        var layout = design.Layout == TrialLayout.SplitPlot
            ? $"split-plot, {string.Join(", ", design.MainPlotFactors)} on main plots in randomised blocks"
            : "randomised complete blocks";
        var pulls = design.Pulls.Count == 0 ? "" : $", {design.Pulls.Count} pulls of the same plots";
        return $"{treatments} in {layout}{pulls}; analysed on the scale: {design.Scale.Statement}";
    }
}
