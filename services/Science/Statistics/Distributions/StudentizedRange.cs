namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The studentised range q: the range of k normal means over an independent estimate of their standard error.</summary>
/// <remarks>
/// P(Q ≤ q) = ∫ f(s) P(W ≤ q s) ds, W the range of k standard normal values and s² = χ²(df) / df (Tukey 1953; Miller,
/// "Simultaneous Statistical Inference"). Both integrals by the trapezoidal rule, error below 1e-10. Much software is
/// wrong by up to 17 % at 2 degrees of freedom; this is checked against closed forms there.
/// </remarks>
public static class StudentizedRange
{
    /// <summary>P(Q ≤ q).</summary>
    /// <param name="q">Any number; at or below 0 the result is 0.</param>
    /// <param name="k">Number of means, 2 to 1000.</param>
    /// <param name="df">Degrees of freedom of the standard error, at least 1, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">q is NaN, or k or df is outside its range.</exception>
    public static double Cdf(double q, int k, double df)
    {
        Require.Number(q, "A studentised range");
        return new RangeTails(k, df).Lower(q);
    }

    /// <summary>P(Q > q), the adjusted p value of a pair, with full relative accuracy in the far tail.</summary>
    /// <inheritdoc cref="Cdf" path="/param|/exception"/>
    public static double Upper(double q, int k, double df)
    {
        Require.Number(q, "A studentised range");
        return new RangeTails(k, df).Upper(q);
    }

    /// <summary>q with P(Q ≤ q) = p.</summary>
    /// <param name="p">Strictly between 0 and 1.</param>
    /// <param name="k">Number of means, 2 to 1000.</param>
    /// <param name="df">Degrees of freedom of the standard error, at least 1, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">p, k or df is outside its range.</exception>
    public static double Quantile(double p, int k, double df)
    {
        Require.Probability(p);
        return new RangeTails(k, df).Quantile(p, 1 - p);
    }

    /// <summary>q with P(Q > q) = alpha, the critical value.</summary>
    /// <param name="alpha">Strictly between 0 and 1.</param>
    /// <param name="k">Number of means, 2 to 1000.</param>
    /// <param name="df">Degrees of freedom of the standard error, at least 1, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">alpha, k or df is outside its range.</exception>
    public static double UpperQuantile(double alpha, int k, double df)
    {
        Require.Probability(alpha);
        return new RangeTails(k, df).Quantile(1 - alpha, alpha);
    }
}
