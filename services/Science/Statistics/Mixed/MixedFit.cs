using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>A fitted <see cref="MixedModel"/>.</summary>
public sealed class MixedFit
{
    private readonly MixedDesign _design;
    private readonly double[] _coefficients;
    private readonly Lazy<FixedEffectInference> _inference;

    internal MixedFit(MixedDesign design, CovarianceStructure structure, double[] free, Likelihood found)
    {
        _design = design;
        Structure = structure.Name;
        var changes = design.Search.Coefficients(found.Solution);
        _coefficients = [.. design.Ordinary.Coefficients.Zip(changes, (first, change) => first + change)];
        var random = free[..design.Random.Count];
        var natural = structure.Natural(free.AsSpan(random.Length), found.Variance, design.Times);
        double[] variances = [.. random.Select(relative => relative * relative * found.Variance)];
        var pulls = structure.Shape(free.AsSpan(random.Length), design.Times);
        _inference = new Lazy<FixedEffectInference>(() => new FixedEffectInference(design, variances, pulls.Scaled(found.Variance), natural));
        CovarianceParameters = [.. design.Random.Zip(variances, (term, value) => new CovarianceParameter($"variance of {term}", value)),
            .. natural.Select(parameter => new CovarianceParameter(parameter.Name, parameter.Value))];
        LogLikelihood = found.Value;
    }

    /// <summary>Covariance structure of the pulls within a plot, in words.</summary>
    public string Structure { get; }

    /// <summary>Restricted log-likelihood, factors coded against their first level; comparable between models with the same fixed effects.</summary>
    public double LogLikelihood { get; }

    /// <summary>Fixed effects and covariance parameters together.</summary>
    public int ParameterCount => _design.FixedColumns + CovarianceParameters.Count;

    /// <summary>-2 LogLikelihood + 2 ParameterCount; smaller is better between covariance structures. Akaike 1974.</summary>
    public double Aic => (-2 * LogLikelihood) + (2 * ParameterCount);

    /// <summary>-2 LogLikelihood + ParameterCount * log(rows - fixed effects). Schwarz 1978.</summary>
    public double Bic => (-2 * LogLikelihood) + (ParameterCount * Math.Log(_design.Data.Rows - _design.FixedColumns));

    /// <summary>Variances of the random terms, then those of the pulls within a plot.</summary>
    public IReadOnlyList<CovarianceParameter> CovarianceParameters { get; }

    /// <summary>The value of a covariance parameter.</summary>
    /// <exception cref="KeyNotFoundException">No such name; the message lists the names.</exception>
    public double CovarianceParameter(string name) => CovarianceParameters.SingleOrDefault(parameter => parameter.Name == name)?.Value
        ?? throw new KeyNotFoundException($"Found no covariance parameter '{name}'; there are {string.Join(", ", CovarianceParameters.Select(parameter => parameter.Name))}.");

    /// <summary>Marginal (type III) tests: for each term, whether its adjusted means show no effect or interaction.</summary>
    /// <param name="method">Rule for the denominator degrees of freedom.</param>
    public AnovaTable Tests(DegreesOfFreedom method)
    {
        var rows = new List<AnovaRow>();
        var lost = new List<NotEstimableTerm>();
        foreach (var term in _design.Fixed.Terms)
        {
            var contrasts = EffectContrasts.Of(_design.Data, _design.Fixed, term);
            var missing = contrasts.Count(weights => !_design.Search.Qr.IsEstimable(weights));
            try
            {
                rows.Add(missing == 0
                    ? Test(term, contrasts, method)
                    : throw new NotEstimableException(term.Name, "a cell that its means need was never observed, so a test would answer another question"));
            }
            catch (NotEstimableException reason)
            {
                lost.Add(new NotEstimableTerm(term.Name, Math.Max(1, missing), reason.Why));
            }
        }

        return new AnovaTable($"REML, marginal (type III) F tests, {Describe(method)} degrees of freedom; pulls of a plot: {Structure}", rows, lost);
    }

    /// <summary>Adjusted means (generalised least squares) with standard errors; each difference has its own degrees of freedom.</summary>
    public AdjustedMeans Means(DegreesOfFreedom method, params IReadOnlyList<string> factors) =>
        MeanCells.Build(_design.Data, Term.Of(factors), _design.Fixed, (weights, what) => Estimate(weights, what, method),
            pairs: weights => _inference.Value.Differences([.. weights.Select(one => _design.Search.Qr.Select(one))], method));

    private AnovaRow Test(Term term, IReadOnlyList<double[]> contrasts, DegreesOfFreedom method)
    {
        var kept = Matrix.FromRows([.. contrasts.Select(weights => _design.Search.Qr.Select(weights))], _coefficients.Length);
        var (f, denominator) = _inference.Value.Test(kept, _coefficients, method);
        return new AnovaRow
        {
            Stratum = "",
            Term = term.Name,
            Df = contrasts.Count,
            F = f,
            DenominatorDf = denominator,
            P = FDistribution.Upper(f, contrasts.Count, denominator),
            TestedAgainst = $"REML variances, {Describe(method)}",
        };
    }

    private LinearEstimate Estimate(double[] weights, string what, DegreesOfFreedom method)
    {
        if (!_design.Search.Qr.IsEstimable(weights))
        {
            throw new NotEstimableException(what, "a cell it needs was never observed");
        }

        var kept = _design.Search.Qr.Select(weights);
        var (variance, df) = _inference.Value.Variance(kept, method);
        return LinearEstimate.FromParts(VectorKernel.Dot(kept, _coefficients), [new ErrorPart("REML", variance, df)]);
    }

    private static string Describe(DegreesOfFreedom method) => method == DegreesOfFreedom.KenwardRoger ? "Kenward-Roger" : "Satterthwaite";
}
