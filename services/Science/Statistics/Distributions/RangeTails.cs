namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>
/// The studentised range of one number of means and one df: a table of pairs asks it many times, and what the questions share is
/// computed once.
/// </summary>
internal sealed class RangeTails
{
    private const int MostMeans = 1000;

    private readonly int _k;
    private readonly double _df;
    private readonly ScaleMixture _lower;
    private readonly ScaleMixture _upper;

    internal RangeTails(int k, double df)
    {
        Require.AtLeast(k, 2, "The number of means");
        if (k > MostMeans)
        {
            throw new ArgumentOutOfRangeException(nameof(k), FormattableString.Invariant($"The number of means must be at most {MostMeans}; found {k}."));
        }

        if (!(df >= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(df), FormattableString.Invariant($"Degrees of freedom must be at least 1 (infinity allowed); found {df}."));
        }

        var range = new NormalRange(k);
        _k = k;
        _df = df;
        _lower = new ScaleMixture(df, k, range.Lower);
        _upper = new ScaleMixture(df, k, range.Upper);
    }

    internal double Lower(double q) => q <= 0 ? 0 : double.IsInfinity(q) ? 1 : Math.Min(1, _lower.Mean(q));

    internal double Upper(double q) => q <= 0 ? 1 : double.IsInfinity(q) ? 0 : Math.Min(1, _upper.Mean(q));

    /// <summary>The answer lies between one t test (k = 2, exact) and the Bonferroni bound over all k(k - 1)/2 pairs.</summary>
    internal double Quantile(double lower, double upper)
    {
        var least = Math.Sqrt(2) * StudentT.UpperQuantile(0.5 * upper, _df);
        if (_k == 2)
        {
            return least;
        }

        var most = Math.Sqrt(2) * StudentT.UpperQuantile(upper / (_k * (_k - 1.0)), _df);
        return lower < upper ? TailRoot.Find(least, most, lower, Lower) : TailRoot.Find(least, most, upper, Upper);
    }
}
