using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Reporting.Season;

/// <summary>Fits the model over all pulls of one response.</summary>
internal static class SeasonTableMaker
{
    public static SeasonTables Make(TrialModel model, PlotMeans means, ResponseScale scale)
    {
        int[] pulls = [.. means.Pulls.Where(pull => !means.OfPull(pull).All(cell => cell.BelowLimit))];
        if (model.WhyNone is { } none)
        {
            return Nothing(none);
        }

        if (pulls.Length < 2)
        {
            return Nothing($"values of {pulls.Length} pull(s) can be analysed; time in storage needs at least 2");
        }

        try
        {
            var analysis = FieldTrialAnalysis.AnalyseSeason(model.Design(scale, pulls), means.Rows(model, pulls))!;
            return analysis.Model is null
                ? new SeasonTables(analysis, [], [], string.Join("; ", analysis.Candidates.Select(one => $"{one.Structure}: {one.NotFitted}").Distinct()))
                : new SeasonTables(analysis, Follow(model, analysis, model.CloneFactor, pulls), Follow(model, analysis, model.Cells, pulls), null) { Planned = PlannedAnswers.Of(model, analysis.Means) };
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            return Nothing(MeansTables.Reason(fault));
        }
    }

    private static SeasonTables Nothing(string why) => new(null, [], [], why);

    private static IReadOnlyList<Trajectory> Follow(TrialModel model, RepeatedAnalysis analysis, string? term, int[] pulls)
    {
        var means = term is null ? null : analysis.Means.FirstOrDefault(entry => entry.Term.Name == $"{term}:pull");
        return means is null
            ? []
            : [.. means.Cells.GroupBy(cell => string.Join(":", cell.Levels.SkipLast(1))).Select(group => new Trajectory(group.Key, [.. Points(model, group, pulls)]))];
    }

    private static IEnumerable<TrajectoryPoint> Points(TrialModel model, IEnumerable<AdjustedMean> cells, int[] pulls) =>
        cells.Where(cell => cell.Estimate is not null).Select(cell =>
        {
            var pull = pulls.Single(number => TrialModel.NameOf(number) == cell.Levels[^1]);
            return new TrajectoryPoint(pull, model.Data.DayOf(pull), cell.Estimate!.Estimate, cell.Estimate.StandardError, cell.Estimate.Df);
        });
}
