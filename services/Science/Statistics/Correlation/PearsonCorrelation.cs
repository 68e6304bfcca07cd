using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Correlation;

/// <summary>Linear correlation of two variables measured on the same plots.</summary>
public static class PearsonCorrelation
{
    /// <summary>
    /// r = Sxy / √(Sxx Syy) from centred sums; t on n - 2; interval tanh(artanh r ± z / √(n - 3)) (Fisher 1921).
    /// </summary>
    /// <param name="x">At least 3 finite values.</param>
    /// <param name="y">As many, on the same plots in the same order.</param>
    /// <param name="alpha">1 - confidence of the interval, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">Too few values, unequal counts, a value that is not finite, alpha outside its range.</exception>
    /// <exception cref="NotEstimableException">All x or all y are equal.</exception>
    public static CorrelationEstimate Of(IReadOnlyList<double> x, IReadOnlyList<double> y, double alpha)
    {
        Require.Probability(alpha);
        var r = Products.Of(x, y, 3, "The correlation").Coefficient;
        var df = x.Count - 2;
        var t = r * Math.Sqrt(df / ((1 - r) * (1 + r)));
        return new CorrelationEstimate("Pearson", x.Count, r, t, df, StudentT.TwoSided(t, df), Fisher(r, x.Count, 1, alpha));
    }

    // inflation is the variance of artanh r times n - 3.
    internal static ConfidenceInterval? Fisher(double r, int n, double inflation, double alpha)
    {
        if (n < 4 || Math.Abs(r) >= 1)
        {
            return null;
        }

        var half = Normal.UpperQuantile(alpha / 2) * Math.Sqrt(inflation / (n - 3));
        return new ConfidenceInterval(Math.Tanh(Math.Atanh(r) - half), Math.Tanh(Math.Atanh(r) + half));
    }
}
