namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>Student's t distribution with fractional degrees of freedom allowed (Satterthwaite) and df = infinity for the normal.</summary>
/// <remarks>P(T > t) = Iₓ(df/2, 1/2) / 2 with x = df / (df + t²), t ≥ 0 (Abramowitz and Stegun 26.7.1).</remarks>
public static class StudentT
{
    /// <summary>P(T ≤ t).</summary>
    /// <param name="t">Any number; infinities give 0 and 1.</param>
    /// <param name="df">Above 0, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">t is NaN, or df is NaN or not above 0.</exception>
    public static double Cdf(double t, double df) => Upper(-t, df);

    /// <summary>P(T > t), with full relative accuracy in the far tail.</summary>
    /// <inheritdoc cref="Cdf" path="/param|/exception"/>
    public static double Upper(double t, double df)
    {
        Require.Number(t, "A t value");
        Require.DegreesOfFreedom(df);
        if (double.IsPositiveInfinity(df))
        {
            return Normal.Upper(t);
        }

        return t < 0 ? 1 - (0.5 * BothTails(-t, df)) : 0.5 * BothTails(t, df);
    }

    /// <summary>P(|T| > |t|), the two-sided p value.</summary>
    /// <inheritdoc cref="Cdf" path="/param|/exception"/>
    public static double TwoSided(double t, double df) => 2 * Upper(Math.Abs(t), df);

    /// <summary>t with P(T ≤ t) = p.</summary>
    /// <param name="p">Strictly between 0 and 1.</param>
    /// <param name="df">Above 0, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is outside 0 to 1, or df is NaN or not above 0.</exception>
    public static double Quantile(double p, double df)
    {
        Require.Probability(p);
        return p <= 0.5 ? -UpperQuantile(p, df) : UpperQuantile(1 - p, df);
    }

    /// <summary>t with P(T > t) = q: the critical value at q = alpha/2 for a two-sided test.</summary>
    /// <param name="q">Strictly between 0 and 1.</param>
    /// <param name="df">Above 0, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">q is outside 0 to 1, or df is NaN or not above 0.</exception>
    public static double UpperQuantile(double q, double df)
    {
        Require.Probability(q);
        Require.DegreesOfFreedom(df);
        if (double.IsPositiveInfinity(df))
        {
            return Normal.UpperQuantile(q);
        }

        return q switch
        {
            0.5 => 0,
            > 0.5 => -UpperQuantile(1 - q, df),
            _ => Math.Sqrt(df) * Math.Exp(-0.5 * SpecialFunctions.BetaLogOdds(2 * q, 1 - (2 * q), 0.5 * df, 0.5)),
        };
    }

    private static double BothTails(double t, double df)
    {
        var ratio = t / Math.Sqrt(df);
        if (ratio > 1e150)
        {
            // The square leaves double precision; there x = ratio^-2 and the tail is x^(df/2) / (df/2 B).
            return Math.Exp((-df * Math.Log(ratio)) - Math.Log(0.5 * df) - SpecialFunctions.LogBeta(0.5 * df, 0.5));
        }

        var square = ratio * ratio;
        return SpecialFunctions.BetaTails(1 / (1 + square), square / (1 + square), 0.5 * df, 0.5).Lower;
    }
}
