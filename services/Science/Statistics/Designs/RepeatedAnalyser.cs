using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The tables over all pulls.</summary>
internal static class RepeatedAnalyser
{
    public static RepeatedAnalysis Analyse(FieldTrialDesign design, FieldTrialRows rows)
    {
        var data = rows.Data(null);
        var terms = Term.Factorial([.. design.Factors.Select(factor => factor.Name), FieldTrialDesign.Pull]);
        var complete = rows.IsComplete(null);
        var strata = complete ? StratifiedAnova.Fit(data, terms, [.. design.Units, Term.Of(FieldTrialDesign.Plot)]) : null;
        var sphericity = complete ? TrySphericity(design, rows, data) : null;
        var (model, candidates) = Choose(design, rows, data, terms);
        var tests = model?.Tests(DegreesOfFreedom.KenwardRoger);
        return new RepeatedAnalysis(
            strata?.Table,
            complete ? null : "values are missing: the comparisons spread over several strata, and the mixed model stands alone",
            sphericity,
            sphericity is null ? [] : Correct(strata!.Table, sphericity),
            candidates,
            model,
            tests,
            model is null ? [] : [.. terms.Select(term => model.Means(DegreesOfFreedom.KenwardRoger, term.Variables))]);
    }

    private static CorrectedTest[] Correct(AnovaTable table, SphericityTest sphericity) =>
        [.. table.Rows.Where(row => row.Stratum == Stratum.Within && row.F is not null).Select(row => new CorrectedTest(row.Term,
            Sphericity.CorrectedP(row, sphericity.GreenhouseGeisser), Sphericity.CorrectedP(row, sphericity.HuynhFeldt)))];

    /// <summary>Between plots only the treatments are fitted, so that the covariance matrix is the one behind the within-plot residual.</summary>
    private static SphericityTest? TrySphericity(FieldTrialDesign design, FieldTrialRows rows, ModelData data)
    {
        var plots = rows.Select(null).Index().GroupBy(entry => entry.Item.Plot).ToArray();
        var profiles = plots.Select(plot => plot.OrderBy(entry => rows.DayOf(entry.Item)).Select(entry => data.Response[entry.Index]).ToArray()).ToArray();
        var factors = design.Factors.Select(factor => Factor.Of(factor.Name, factor.Levels, [.. plots.Select(plot => plot.First().Item.Levels[factor.Name])])).ToArray();
        try
        {
            return Sphericity.Test(profiles, factors, design.Treatments);
        }
        catch (NotEstimableException)
        {
            // The strata table still stands; without the matrix there is only no correction to offer.
            return null;
        }
    }

    private static (MixedFit? Model, IReadOnlyList<StructureCandidate> Candidates) Choose(
        FieldTrialDesign design, FieldTrialRows rows, ModelData data, IReadOnlyList<Term> terms)
    {
        double[] days = [.. rows.Select(null).Select(rows.DayOf)];
        MixedDesign? arranged = null;
        MixedFit? best = null;
        var candidates = new List<StructureCandidate>();
        foreach (var structure in design.Structures)
        {
            try
            {
                arranged ??= new MixedDesign(data, terms, design.Units, new RepeatedPulls(Term.Of(FieldTrialDesign.Plot), days, structure));
                var fit = MixedModel.Fit(arranged, structure);
                candidates.Add(new StructureCandidate(structure.Name, fit.LogLikelihood, fit.ParameterCount, fit.Aic, null));
                best = best is null || fit.Aic < best.Aic ? fit : best;
            }
            catch (NotEstimableException reason)
            {
                candidates.Add(new StructureCandidate(structure.Name, null, null, null, reason.Why));
            }
        }

        return (best, candidates);
    }
}
