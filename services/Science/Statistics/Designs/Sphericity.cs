using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>Sphericity of repeated pulls and the corrected F tests of a split-plot in time.</summary>
public static class Sphericity
{
    /// <summary>
    /// With S = C'EC for orthonormal contrasts C of the pulls, E the residual sums of products of the plots and n its df:
    /// Greenhouse-Geisser eps = tr(S)^2 / (q tr(S^2)); Huynh-Feldt ((n + 1) q eps - 2) / (q (n - q eps)), cut at 1;
    /// Mauchly W = det(S) / (tr(S) / q)^q with its second-order chi-squared, q = pulls - 1.
    /// Greenhouse and Geisser 1959, Huynh and Feldt 1976 in the form corrected by Lecoutre 1991, Mauchly 1940 (from memory).
    /// </summary>
    /// <param name="profiles">One array a plot: its finite values at every pull, in order; at least two pulls.</param>
    /// <param name="factors">Factors of the plots (one level a plot).</param>
    /// <param name="between">Treatment terms between plots; empty for one group of plots.</param>
    /// <exception cref="ArgumentException">Plots with different numbers of pulls, or a number that is not finite.</exception>
    /// <exception cref="NotEstimableException">No residual df, or contrasts without variation.</exception>
    public static SphericityTest Test(IReadOnlyList<double[]> profiles, IReadOnlyList<Factor> factors, IReadOnlyList<Term> between)
    {
        ArgumentNullException.ThrowIfNull(profiles);
        ArgumentNullException.ThrowIfNull(factors);
        ArgumentNullException.ThrowIfNull(between);
        var pulls = profiles.Count == 0 ? 0 : profiles[0].Length;
        if (pulls < 2 || profiles.Any(profile => profile.Length != pulls))
        {
            throw new ArgumentException($"Found plots with {string.Join(", ", profiles.Select(profile => profile.Length).Distinct())} pull(s); expected the same number in all, at least 2.", nameof(profiles));
        }

        var residuals = Enumerable.Range(0, pulls - 1)
            .Select(contrast => LinearModel.Fit(new ModelData([.. profiles.Select(profile => Helmert(profile, contrast))], factors), between))
            .ToArray();
        var df = residuals[0].ResidualDf;
        var products = new Matrix(pulls - 1, pulls - 1);
        for (var row = 0; row < pulls - 1; row++)
        {
            for (var column = 0; column < pulls - 1; column++)
            {
                products[row, column] = residuals[row].Residuals.Zip(residuals[column].Residuals, (a, b) => a * b).Sum();
            }
        }

        var trace = Enumerable.Range(0, pulls - 1).Sum(index => products[index, index]);
        return df > 0 && trace > 0
            ? Judge(products, trace, df)
            : throw new NotEstimableException("Sphericity", df > 0 ? "the plots do not vary between pulls" : "no residual degrees of freedom are left between plots");
    }

    /// <summary>The probability of an F whose both degrees of freedom are multiplied by epsilon.</summary>
    /// <param name="row">A tested line of the within-plot stratum.</param>
    /// <param name="epsilon">Above 0, at most 1.</param>
    /// <exception cref="ArgumentException">A line without F, or an epsilon outside its range.</exception>
    public static double CorrectedP(AnovaRow row, double epsilon)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (row.F is not { } f || row.DenominatorDf is not { } denominator || epsilon is not (> 0 and <= 1))
        {
            throw new ArgumentException($"Found line '{row.Term}' with F {row.F} and epsilon {epsilon}; expected a tested line and an epsilon above 0, at most 1.", nameof(row));
        }

        return FDistribution.Upper(f, row.Df * epsilon, denominator * epsilon);
    }

    private static SphericityTest Judge(Matrix products, double trace, int df)
    {
        var size = products.Rows;
        var geisser = trace * trace / (size * products.InnerProduct(products));
        var huynh = Math.Min(1, (((df + 1) * size * geisser) - 2) / (size * (df - (size * geisser))));
        // Above its range the formula has lost its meaning (fewer df than contrasts): the lower bound is then the honest value.
        huynh = df > size * geisser ? Math.Max(geisser, huynh) : geisser;
        var w = SymmetricEigen.Decompose(products).Values.Aggregate(1.0, (product, value) => product * Math.Max(0, value) * size / trace);
        return new SphericityTest(geisser, huynh, w, size > 1 && df >= size && w > 0 ? MauchlyP(w, df, size) : null, df, size + 1);
    }

    private static double MauchlyP(double w, double df, double q)
    {
        var rho = 1 - (((2 * q * q) + q + 2) / (6 * df * q));
        var second = (q + 2) * (q - 1) * (q - 2) * ((2 * q * q * q) + (6 * q * q) + (3 * q) + 2) / (288 * df * df * q * q * rho * rho);
        var statistic = Math.Max(0, -df * rho * Math.Log(w));
        var freedom = (q * (q + 1) / 2) - 1;
        var first = ChiSquared.Upper(statistic, freedom);
        return Math.Clamp(first + (second * (ChiSquared.Upper(statistic, freedom + 4) - first)), 0, 1);
    }

    /// <summary>Orthonormal contrast number k: the mean of the first k + 1 pulls against the next one.</summary>
    private static double Helmert(double[] profile, int contrast)
    {
        var before = contrast + 1;
        var sum = profile.Take(before).Sum(value => value - profile[before]);
        return sum / Math.Sqrt(before * (before + 1.0));
    }
}
