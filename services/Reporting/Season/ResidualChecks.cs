using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Science.Statistics.Tests;

namespace LabPipeline.Reporting.Season;

/// <summary>Looks at the residuals of one pull: helps beside the figure, not gates.</summary>
/// <param name="Normality">Shapiro-Wilk; null where it cannot be had.</param>
/// <param name="EqualSpread">Brown-Forsythe between levels of the first factor; null where it cannot be had.</param>
/// <param name="FarthestPlot">Plot with the largest studentised residual.</param>
/// <param name="FarthestT">That residual.</param>
/// <param name="FarthestP">Its probability, for having looked at all plots.</param>
internal sealed record ResidualChecks(TestOutcome? Normality, TestOutcome? EqualSpread, string? FarthestPlot, double? FarthestT, double? FarthestP)
{
    /// <param name="diagnostics">One a plot.</param>
    /// <param name="groupOf">Level a plot belongs to.</param>
    /// <param name="residualDf">Degrees of freedom the residuals have.</param>
    public static ResidualChecks Of(IReadOnlyList<PlotDiagnostic> diagnostics, Func<string, string> groupOf, double residualDf)
    {
        var farthest = diagnostics.Where(one => one.StudentizedResidual is not null).MaxBy(one => Math.Abs(one.StudentizedResidual!.Value));
        return new ResidualChecks(
            Try(() => ShapiroWilk.Of([.. diagnostics.Select(one => one.Residual)])),
            Try(() => EqualVariances.BrownForsythe([.. diagnostics.GroupBy(one => groupOf(one.Plot))
                .Select(group => (IReadOnlyList<double>)[.. group.Select(one => one.Residual)])])),
            farthest?.Plot,
            farthest?.StudentizedResidual,
            farthest is null || residualDf < 2 ? null : Math.Min(1, diagnostics.Count * StudentT.TwoSided(farthest.StudentizedResidual!.Value, residualDf - 1)));
    }

    private static TestOutcome? Try(Func<TestOutcome> test)
    {
        try
        {
            return test();
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            // Too few plots or equal values: the table shows a dash.
            return null;
        }
    }
}
