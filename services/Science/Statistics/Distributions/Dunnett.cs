namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The largest t (or |t|) among comparisons of several treatments with one control.</summary>
/// <remarks>
/// The correlation of two comparisons is λᵢ λⱼ with λᵢ² = nᵢ / (nᵢ + n₀) for means of nᵢ values and a control of n₀
/// (Dunnett 1955, 1964). Two nested integrals by the trapezoidal rule; error below 1e-9.
/// </remarks>
public sealed class Dunnett
{
    private readonly IReadOnlyList<double> _loadings;
    private readonly double _df;
    private readonly bool _absolute;
    private readonly ScaleMixture _lower;
    private readonly ScaleMixture _upper;

    /// <summary>From the loadings λᵢ, one for each treatment.</summary>
    /// <param name="loadings">At least one; each at or above 0 and below 1.</param>
    /// <param name="df">Degrees of freedom of the standard errors, at least 1, infinity allowed.</param>
    /// <param name="sides">Two-sided takes absolute values. Below is the mirror image of Above: pass -t to it.</param>
    /// <exception cref="ArgumentException">No loadings, or a loading or df outside its range.</exception>
    public Dunnett(IReadOnlyList<double> loadings, double df, Sidedness sides)
    {
        ArgumentNullException.ThrowIfNull(loadings);
        if (loadings.Count == 0)
        {
            throw new ArgumentException("Comparisons with a control need at least 1 treatment; found none.", nameof(loadings));
        }

        foreach (var loading in loadings)
        {
            if (!(loading >= 0 && loading < 1))
            {
                throw new ArgumentOutOfRangeException(nameof(loadings), FormattableString.Invariant($"A loading must be at least 0 and below 1; found {loading}."));
            }
        }

        if (!(df >= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(df), FormattableString.Invariant($"Degrees of freedom must be at least 1 (infinity allowed); found {df}."));
        }

        _loadings = loadings;
        _df = df;
        _absolute = sides == Sidedness.TwoSided;
        var maximum = new ControlMaximum(loadings, _absolute);
        _lower = new ScaleMixture(df, loadings.Count, maximum.Lower);
        _upper = new ScaleMixture(df, loadings.Count, maximum.Upper);
    }

    /// <summary>Equal numbers of values behind every mean: every correlation is 1/2.</summary>
    /// <param name="treatments">Number of treatments beside the control, at least 1.</param>
    /// <param name="df">Degrees of freedom of the standard errors, at least 1, infinity allowed.</param>
    /// <param name="sides">One-sided or two-sided.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is outside its range.</exception>
    public static Dunnett ForEqualSizes(int treatments, double df, Sidedness sides)
    {
        Require.AtLeast(treatments, 1, "The number of treatments beside the control");
        return new Dunnett([.. Enumerable.Repeat(Math.Sqrt(0.5), treatments)], df, sides);
    }

    /// <summary>Any numbers of values behind the means.</summary>
    /// <param name="control">Number of values behind the control mean, at least 1.</param>
    /// <param name="treatments">Number of values behind each treatment mean, at least 1.</param>
    /// <param name="df">Degrees of freedom of the standard errors, at least 1, infinity allowed.</param>
    /// <param name="sides">One-sided or two-sided.</param>
    /// <exception cref="ArgumentException">A parameter is outside its range.</exception>
    public static Dunnett ForSizes(int control, IReadOnlyList<int> treatments, double df, Sidedness sides)
    {
        ArgumentNullException.ThrowIfNull(treatments);
        Require.AtLeast(control, 1, "The number of values behind the control mean");
        foreach (var size in treatments)
        {
            Require.AtLeast(size, 1, "The number of values behind a treatment mean", nameof(treatments));
        }

        return new Dunnett([.. treatments.Select(size => Math.Sqrt(size / ((double)size + control)))], df, sides);
    }

    /// <summary>P(max T ≤ d), or P(max |T| ≤ d) when two-sided.</summary>
    /// <exception cref="ArgumentOutOfRangeException">d is NaN.</exception>
    public double Cdf(double d)
    {
        Require.Number(d, "A Dunnett statistic");
        return double.IsInfinity(d) || (_absolute && d <= 0)
            ? (d > 0 ? 1 : 0)
            : Math.Min(1, _lower.Mean(d));
    }

    /// <summary>P(max T > d), or P(max |T| > d) when two-sided: the adjusted p value, accurate in the far tail.</summary>
    /// <exception cref="ArgumentOutOfRangeException">d is NaN.</exception>
    public double Upper(double d)
    {
        Require.Number(d, "A Dunnett statistic");
        return double.IsInfinity(d) || (_absolute && d <= 0)
            ? (d > 0 ? 0 : 1)
            : Math.Min(1, _upper.Mean(d));
    }

    /// <summary>d with P(max ≤ d) = p.</summary>
    /// <param name="p">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is NaN or outside 0 to 1.</exception>
    public double Quantile(double p)
    {
        Require.Probability(p);
        return FromTails(p, 1 - p);
    }

    /// <summary>d with P(max > d) = alpha, the critical value.</summary>
    /// <param name="alpha">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">alpha is NaN or outside 0 to 1.</exception>
    public double UpperQuantile(double alpha)
    {
        Require.Probability(alpha);
        return FromTails(1 - alpha, alpha);
    }

    /// <summary>The answer lies between one t test and the Bonferroni bound.</summary>
    private double FromTails(double lower, double upper)
    {
        var each = _absolute ? 0.5 * upper : upper;
        var least = StudentT.UpperQuantile(each, _df);
        if (_loadings.Count == 1)
        {
            return least;
        }

        var most = StudentT.UpperQuantile(each / _loadings.Count, _df);
        return lower < upper ? TailRoot.Find(least, most, lower, Cdf) : TailRoot.Find(least, most, upper, Upper);
    }
}
