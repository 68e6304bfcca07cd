using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>The single number under a table of means: differences above it are called significant.</summary>
public static class CriticalDifference
{
    /// <summary>LSD = t(1 - alpha/2, df) × SED. Right only for planned comparisons or after a significant F.</summary>
    /// <param name="sed">Standard error of a difference, in the unit of the response, above 0.</param>
    /// <param name="df">Its degrees of freedom, above 0, infinity allowed.</param>
    /// <param name="alpha">Level of each comparison, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is outside its range.</exception>
    public static double Lsd(double sed, double df, double alpha)
    {
        Require.Positive(sed, "The standard error of a difference");
        Require.Probability(alpha);
        return StudentT.UpperQuantile(alpha / 2, df) * sed;
    }

    /// <summary>HSD = q(1 - alpha, k, df) × SED / √2 (Tukey), for all pairs of k means together.</summary>
    /// <param name="sed">Standard error of a difference, in the unit of the response, above 0.</param>
    /// <param name="means">Number of means, 2 to 1000.</param>
    /// <param name="df">Degrees of freedom of the SED, at least 1, infinity allowed.</param>
    /// <param name="alpha">Level for the whole set, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is outside its range.</exception>
    public static double Hsd(double sed, int means, double df, double alpha)
    {
        Require.Positive(sed, "The standard error of a difference");
        return StudentizedRange.UpperQuantile(alpha, means, df) * sed / Math.Sqrt(2);
    }
}
