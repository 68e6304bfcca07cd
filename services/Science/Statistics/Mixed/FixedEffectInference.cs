using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>Covariance of the fixed effects and the denominator degrees of freedom of their tests.</summary>
internal sealed class FixedEffectInference
{
    private readonly MixedDesign _design;
    private readonly Matrix[][] _bases;
    private readonly Matrix _uncertainty;
    private readonly BlockedForm _plain;
    private readonly BlockedForm[] _sensitivity;
    private readonly BlockedForm _correction;

    /// <param name="design">The fitted design.</param>
    /// <param name="variances">Variances of the random terms.</param>
    /// <param name="pulls">Covariance between the pulls of a plot.</param>
    /// <param name="natural">The parameters it depends on.</param>
    public FixedEffectInference(MixedDesign design, double[] variances, Matrix pulls, IReadOnlyList<NaturalParameter> natural)
    {
        _design = design;
        var sums = Require(VarianceSums.TryBuild(design, variances, pulls, [.. natural.Select(parameter => parameter.Derivative)]));
        _uncertainty = Require(Cholesky.TryFactor(sums.ParameterInformation())).Inverse();
        var forms = new InferenceForms(sums, design.Random.Count);
        _plain = forms.Plain();
        _sensitivity = forms.Sensitivity();
        (_correction, var added) = forms.Correction(_uncertainty);
        _bases = [sums.Carried, .. forms.Loaded, added];
    }

    /// <summary>Variance of one combination of the estimable fixed effects, and its degrees of freedom 2 v^2 / var(v).</summary>
    public (double Variance, double Df) Variance(double[] weights, DegreesOfFreedom method)
    {
        var loadings = Load(Matrix.FromRows([weights], weights.Length));
        var plain = _plain.Around(loadings)[0, 0];
        var slopes = _sensitivity.Select(form => form.Around(loadings)[0, 0]).ToArray();
        var df = 2 * plain * plain / _uncertainty.Form(slopes, slopes);
        return (method == DegreesOfFreedom.KenwardRoger ? plain + (2 * _correction.Around(loadings)[0, 0]) : plain, df);
    }

    /// <summary>Standard error and degrees of freedom of the difference between any two combinations, from one pass over all of them.</summary>
    public Func<int, int, PairPrecision> Differences(IReadOnlyList<double[]> weights, DegreesOfFreedom method)
    {
        var loadings = Load(Matrix.FromRows(weights, weights[0].Length));
        var plain = _plain.Around(loadings);
        var slopes = _sensitivity.Select(form => form.Around(loadings)).ToArray();
        var correction = method == DegreesOfFreedom.KenwardRoger ? _correction.Around(loadings) : null;
        return (first, second) =>
        {
            double Of(Matrix form) => form[first, first] + form[second, second] - (2 * form[first, second]);
            var variance = Of(plain);
            double[] slope = [.. slopes.Select(Of)];
            var enlarged = variance + (correction is null ? 0 : 2 * Of(correction));
            return new PairPrecision(Math.Sqrt(enlarged), 2 * variance * variance / _uncertainty.Form(slope, slope));
        };
    }

    public (double F, double Df) Test(Matrix contrasts, double[] coefficients, DegreesOfFreedom method)
    {
        var estimates = contrasts.Times(coefficients);
        var loadings = Load(contrasts);
        var plain = _plain.Around(loadings);
        return method == DegreesOfFreedom.KenwardRoger ? KenwardRoger(loadings, plain, estimates) : Satterthwaite(contrasts, plain, estimates);
    }

    /// <summary>Kenward and Roger 1997, section 3 (from memory): scale and df that match the first two moments of the Wald F.</summary>
    private (double F, double Df) KenwardRoger(ContrastLoadings contrasts, Matrix plain, double[] estimates)
    {
        double size = contrasts.Count;
        var inverse = Require(Cholesky.TryFactor(plain)).Inverse();
        var turned = _sensitivity.Select(form => inverse.Times(form.Around(contrasts))).ToArray();
        var (a1, a2) = (0.0, 0.0);
        for (var i = 0; i < turned.Length; i++)
        {
            for (var j = 0; j < turned.Length; j++)
            {
                a1 += _uncertainty[i, j] * Trace(turned[i]) * Trace(turned[j]);
                a2 += _uncertainty[i, j] * turned[i].InnerProduct(turned[j].Transposed());
            }
        }

        var b = (a1 + (6 * a2)) / (2 * size);
        var g = (((size + 1) * a1) - ((size + 4) * a2)) / ((size + 2) * a2);
        var divisor = (3 * size) + (2 * (1 - g));
        var (c1, c2, c3) = (g / divisor, (size - g) / divisor, (size + 2 - g) / divisor);
        var mean = 1 / (1 - (a2 / size));
        var variance = 2 / size * (1 + (c1 * b)) / ((1 - (c2 * b)) * (1 - (c2 * b)) * (1 - (c3 * b)));
        var ratio = variance / (2 * mean * mean);
        var df = 4 + ((size + 2) / ((size * ratio) - 1));
        var enlarged = plain.Scaled(1);
        enlarged.Add(_correction.Around(contrasts), 2);
        var f = Wald(estimates, enlarged);
        return df > 2
            ? (f * df / (mean * (df - 2)), df)
            : throw new NotEstimableException("A Kenward-Roger test", "the variances are known too poorly for its approximation (2 df or fewer)");
    }

    /// <summary>Each eigen-direction of the contrasts has its own df; their F is matched by 2E/(E - l), E = sum of v/(v - 2).</summary>
    private (double F, double Df) Satterthwaite(Matrix contrasts, Matrix plain, double[] estimates)
    {
        var f = Wald(estimates, plain);
        if (contrasts.Rows == 1)
        {
            return (f, Variance(contrasts.Row(0).ToArray(), DegreesOfFreedom.Satterthwaite).Df);
        }

        var directions = SymmetricEigen.Decompose(plain).Vectors.Transposed().Times(contrasts);
        var sum = 0.0;
        for (var row = 0; row < directions.Rows; row++)
        {
            var df = Variance(directions.Row(row).ToArray(), DegreesOfFreedom.Satterthwaite).Df;
            sum += df > 2 ? df / (df - 2) : 0;
        }

        return sum > contrasts.Rows
            ? (f, 2 * sum / (sum - contrasts.Rows))
            : throw new NotEstimableException("A Satterthwaite test", "the variances are known too poorly for its approximation (2 df or fewer)");
    }

    private static double Wald(double[] estimates, Matrix covariance)
    {
        var root = Require(Cholesky.TryFactor(covariance)).SolveLower(estimates);
        return VectorKernel.Dot(root, root) / estimates.Length;
    }

    private ContrastLoadings Load(Matrix contrasts) => new(_design.Blocks, _bases, _design.RandomColumns,
        Matrix.FromRows([.. Enumerable.Range(0, contrasts.Rows).Select(row => _design.Search.Weights(contrasts.Row(row)))], contrasts.Columns));

    private static double Trace(Matrix matrix)
    {
        var sum = 0.0;
        for (var index = 0; index < matrix.Rows; index++)
        {
            sum += matrix[index, index];
        }

        return sum;
    }

    private static T Require<T>(T? found)
        where T : class => found
        ?? throw new NotEstimableException("The uncertainty of the fixed effects", "the data do not determine all covariance parameters; state a simpler structure");
}
