using LabPipeline.Reporting.Figures;
using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Report;

/// <summary>The figures of a report, in the order it prints them.</summary>
internal static class SeasonFigures
{
    public static IReadOnlyList<Figure> Of(SeasonData data, TrialAnalysis analysis)
    {
        var trajectories = analysis.Responses.Where(one => one.Response.Major).SelectMany(one =>
        {
            var limits = analysis.Keeping.Where(table => table.Limit.Response == one.Response).Select(table => table.Limit).ToList();
            return new[] { TrajectoryFigures.Clones(one, limits), TrajectoryFigures.Treatments(one, analysis.Model, limits) };
        });
        return
        [
            .. trajectories.Append(SugarColourFigure.Draw(analysis.SugarColour, [.. data.Levels.Where(level => level.Factor == data.Trial.CloneFactor).Select(level => level.Level)])).Append(SeverityFigure.Draw(data)).OfType<Figure>(),
            .. new[] { GridFigure.Draw(data), ControlFigures.Draw(data), ResidualFigure.Draw(analysis.Responses) }.OfType<Figure>(),
        ];
    }
}
