using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The linear mixed model y = X beta + sum over random terms of Z u + e by restricted maximum likelihood: random blocks and main plots, and a
/// covariance structure for repeated pulls of a plot. Missing plots and pulls are rows left out.
/// </summary>
public static class MixedModel
{
    /// <param name="data">Response and factors.</param>
    /// <param name="fixedTerms">Treatment terms after the intercept.</param>
    /// <param name="random">Random units, such as the block and the main plot; variances are kept at zero or above. Empty for none.</param>
    /// <param name="repeated">Null where rows are independent given the random units.</param>
    /// <exception cref="ArgumentException">Unknown terms, or two values for one plot and pull.</exception>
    /// <exception cref="NotEstimableException">A random unit that occurs once or is as small as the plots, no residual, or a search that reaches no maximum.</exception>
    public static MixedFit Fit(ModelData data, IReadOnlyList<Term> fixedTerms, IReadOnlyList<Term> random, RepeatedPulls? repeated = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(fixedTerms);
        ArgumentNullException.ThrowIfNull(random);
        data.RequireFactorsOnly(fixedTerms.Concat(random));
        return Fit(new MixedDesign(data, fixedTerms, random, repeated), repeated?.Structure ?? CovarianceStructure.Independent);
    }

    /// <summary>One of several structures over the same rows: what does not depend on the structure is arranged once.</summary>
    internal static MixedFit Fit(MixedDesign design, CovarianceStructure structure)
    {
        RequireResidual(design);
        var likelihood = new RestrictedLikelihood(design, structure);
        var starts = structure.Starts(design.Times.Count).Select(shape => (double[])[.. design.Random.Select(_ => 0.6), .. shape]);
        var best = starts
            .Select(start => QuasiNewton.Minimise(point => Negative(likelihood, point), start))
            .Where(point => point is not null)
            .Select(point => (Point: point!, Found: likelihood.Evaluate(point!)!))
            .OrderByDescending(candidate => candidate.Found.Value)
            .FirstOrDefault();
        return best.Point is null
            ? throw new NotEstimableException($"The mixed model with {structure.Name}", "the search for the largest likelihood did not settle; state a simpler covariance structure")
            : new MixedFit(design, structure, best.Point, best.Found);
    }

    private static (double Value, Func<double[]> Gradient)? Negative(RestrictedLikelihood likelihood, double[] point) =>
        likelihood.Evaluate(point) is { } found ? (-found.Value, () => [.. found.Gradient().Select(slope => -slope)]) : null;

    private static void RequireResidual(MixedDesign design)
    {
        var residuals = design.Ordinary.Residuals;
        var spread = design.Data.Response.Max() - design.Data.Response.Min();
        if (residuals.Max(Math.Abs) <= 1e-12 * spread || spread == 0)
        {
            throw new NotEstimableException("The mixed model", spread == 0 ? "all values are equal" : "the values agree exactly with the fixed effects");
        }
    }
}
