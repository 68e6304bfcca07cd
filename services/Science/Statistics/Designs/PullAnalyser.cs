using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The tables of one pull.</summary>
internal static class PullAnalyser
{
    public static PullAnalysis Analyse(FieldTrialDesign design, FieldTrialRows rows, string? pull)
    {
        var data = rows.Data(pull);
        // The residuals of the smallest plots are those left by all larger units and the treatments.
        var smallest = LinearModel.Fit(data, [.. design.Units, .. design.Treatments]);
        var plots = rows.Select(pull);
        var studentized = smallest.StudentizedResiduals;
        var fitted = smallest.Fitted;
        var analysis = new PullAnalysis(pull, data.Rows, smallest.GrandMean, new AnovaTable("", [], []), [], Variation(design, smallest), [], [],
            [.. plots.Select((row, index) => new PlotDiagnostic(row.Plot, fitted[index], smallest.Residuals[index], smallest.Leverages[index], studentized[index]))]);
        return design.Layout == TrialLayout.RandomisedBlocks
            ? Blocks(design, data, smallest, rows.IsComplete(pull), analysis)
            : Split(design, data, analysis);
    }

    /// <summary>
    /// A term confounded whole with blocks, or without any cell to show it, takes no part: marginal sums of squares of all terms it
    /// contains would be lost with it. The rest is tested without it, and the table says so.
    /// </summary>
    private static PullAnalysis Blocks(FieldTrialDesign design, ModelData data, LinearFit whole, bool complete, PullAnalysis analysis)
    {
        var confounded = whole.NotEstimable.Where(lost => design.Treatments.Any(term => term.Name == lost.Term && DfOf(design, term) == lost.LostDf)).ToList();
        Term[] terms = [.. design.Treatments.Where(term => confounded.All(lost => lost.Term != term.Name))];
        var fit = confounded.Count == 0 ? whole : LinearModel.Fit(data, [.. design.Units, .. terms]);
        var table = fit.Anova(complete ? SumsOfSquares.Sequential : SumsOfSquares.TypeThree);
        return analysis with
        {
            Anova = table with { NotEstimable = [.. confounded.Select(lost => lost with { Reason = $"{lost.Reason}; the other terms are tested without it" }), .. table.NotEstimable] },
            Means = [.. terms.Select(term => fit.Means(term.Variables))],
            Components = fit.HasResidual ? [new VarianceComponent(FieldTrialDesign.Plot, fit.ResidualMeanSquare, fit.ResidualDf)] : [],
            NextSeason = fit.HasResidual ? [new NextSeasonPrecision(AnovaRow.Residual, fit.ResidualMeanSquare, fit.ResidualDf)] : [],
        };
    }

    private static PullAnalysis Split(FieldTrialDesign design, ModelData data, PullAnalysis analysis)
    {
        var strata = StratifiedAnova.Fit(data, design.Treatments, design.Units);
        return strata.IsOrthogonal && strata.NotEstimable.Count == 0
            ? analysis with
            {
                Anova = strata.Table,
                Means = [.. design.Treatments.Select(term => strata.Means(term.Variables))],
                Components = Components(data, strata, design),
                NextSeason = [.. strata.Strata.Where(stratum => stratum.Name != FieldTrialDesign.Block && stratum.ResidualMeanSquare > 0)
                    .Select(stratum => new NextSeasonPrecision(stratum.Name, stratum.ResidualMeanSquare!.Value, stratum.ResidualDf))],
            }
            : Mixed(design, data, analysis);
    }

    /// <summary>Missing plots spread treatment comparisons over the strata; REML weighs them.</summary>
    private static PullAnalysis Mixed(FieldTrialDesign design, ModelData data, PullAnalysis analysis)
    {
        try
        {
            var fit = MixedModel.Fit(data, design.Treatments, design.Units);
            return analysis with
            {
                Anova = fit.Tests(DegreesOfFreedom.KenwardRoger),
                Means = [.. design.Treatments.Select(term => fit.Means(DegreesOfFreedom.KenwardRoger, term.Variables))],
                Components = [.. fit.CovarianceParameters.Select(parameter => new VarianceComponent(parameter.Name.Replace("variance of ", "", StringComparison.Ordinal), parameter.Value, null))],
            };
        }
        catch (NotEstimableException reason)
        {
            var lost = design.Treatments.Select(term => new NotEstimableTerm(term.Name, DfOf(design, term), reason.Why));
            return analysis with { Anova = new AnovaTable("No analysis", [], [.. lost]) };
        }
    }

    private static IReadOnlyList<VarianceComponent> Components(ModelData data, StratifiedFit strata, FieldTrialDesign design)
    {
        try
        {
            return VarianceComponents.FromMeanSquares(data, strata, design.Units);
        }
        catch (NotEstimableException)
        {
            // Blocks of several sizes, or a stratum without residual, still leave tests; the empty list says that components are not to be had.
            return [];
        }
    }

    private static double? Variation(FieldTrialDesign design, LinearFit fit) =>
        ReferenceEquals(design.Scale, ResponseScale.Measured) && fit is { ResidualDf: > 0, GrandMean: > 0 } ? fit.CoefficientOfVariation : null;

    private static int DfOf(FieldTrialDesign design, Term term) =>
        term.Variables.Aggregate(1, (df, name) => df * (design.Factors.Single(entry => entry.Name == name).Levels.Count - 1));
}
