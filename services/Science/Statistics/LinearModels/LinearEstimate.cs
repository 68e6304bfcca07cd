using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A mean, a difference or another linear combination with its standard error.</summary>
/// <param name="Estimate">In units of the (transformed) response.</param>
/// <param name="StandardError">Same units; for a difference of two means this is the SED.</param>
/// <param name="Df">Degrees of freedom of the standard error; fractional where several errors are mixed.</param>
/// <param name="Parts">The errors the variance is made of; one entry where a single error is used.</param>
public sealed record LinearEstimate(double Estimate, double StandardError, double Df, IReadOnlyList<ErrorPart> Parts)
{
    /// <summary>Estimate / StandardError.</summary>
    /// <exception cref="NotEstimableException">The standard error is zero.</exception>
    public double T => StandardError > 0
        ? Estimate / StandardError
        : throw new NotEstimableException("t of a contrast", "its standard error is zero");

    /// <summary>Two-sided probability of t on <see cref="Df"/> degrees of freedom.</summary>
    public double P => StudentT.TwoSided(T, Df);

    /// <summary>t(1 - alpha/2, Df) * StandardError: the least significant difference when the contrast is a difference.</summary>
    /// <param name="alpha">Two-sided, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">alpha outside its range.</exception>
    public double LeastSignificantDifference(double alpha) => StudentT.UpperQuantile(RequireAlpha(alpha) / 2, Df) * StandardError;

    /// <summary>Estimate -/+ t(1 - alpha/2, Df) * StandardError, covering 1 - alpha.</summary>
    public (double Low, double High) Interval(double alpha)
    {
        var half = LeastSignificantDifference(alpha);
        return (Estimate - half, Estimate + half);
    }

    /// <summary>
    /// Critical t as the variance-weighted mean of the errors' own t values, the older alternative to Satterthwaite's df.
    /// Cochran and Cox, Experimental Designs, section 7.16 (from memory).
    /// </summary>
    /// <param name="alpha">Two-sided, above 0 and below 1.</param>
    public double CochranCoxT(double alpha) =>
        Parts.Sum(part => part.Variance * StudentT.UpperQuantile(RequireAlpha(alpha) / 2, part.Df)) / Parts.Sum(part => part.Variance);

    /// <summary>df = (sum v)^2 / sum(v^2 / df) over the errors a variance is made of. Satterthwaite 1946 (from memory).</summary>
    internal static LinearEstimate FromParts(double estimate, IReadOnlyList<ErrorPart> parts)
    {
        var variance = parts.Sum(part => part.Variance);
        var df = parts.Count == 1 || variance == 0
            ? parts[0].Df
            : variance * variance / parts.Sum(part => part.Variance * part.Variance / part.Df);
        return new LinearEstimate(estimate, Math.Sqrt(variance), df, parts);
    }

    private static double RequireAlpha(double alpha) => alpha is > 0 and < 1
        ? alpha
        : throw new ArgumentOutOfRangeException(nameof(alpha), alpha, "Expected a two-sided probability above 0 and below 1.");
}
