namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>
/// The largest of correlated standard normal values Xᵢ = λᵢ Z + √(1 - λᵢ²) Eᵢ, or of their absolute values: what the
/// comparisons of several treatments with one control become when the error variance is known.
/// </summary>
/// <remarks>Given the shared part Z the values are independent, so one integral over Z remains (Dunnett 1955).</remarks>
internal sealed class ControlMaximum
{
    private const double Widest = 40;
    private const double Reach = 8.5;

    private readonly (double Shared, double Own, int Count)[] _groups;
    private readonly bool _absolute;
    private readonly double _step;
    private readonly double _largestShared;

    internal ControlMaximum(IReadOnlyList<double> loadings, bool absolute)
    {
        _groups = [.. loadings.GroupBy(loading => loading).Select(same => (same.Key, Math.Sqrt((1 - same.Key) * (1 + same.Key)), same.Count()))];
        _absolute = absolute;
        _largestShared = _groups.Max(group => group.Shared);
        var steepness = _groups.Sum(group => group.Count * Math.Pow(group.Shared / group.Own, 2));
        _step = Math.Min(0.25, 0.8 / Math.Sqrt(1 + steepness));
    }

    internal double Upper(double w)
    {
        if (w >= Widest)
        {
            return 0;
        }

        return Math.Min(1, Sum(Math.Max(w, 0), z =>
        {
            var any = 0.0;
            foreach (var (shared, own, count) in _groups)
            {
                var outside = Normal.RawUpper((w - (shared * z)) / own);
                if (_absolute)
                {
                    outside += Normal.RawUpper((w + (shared * z)) / own);
                }

                any = Complement.OfBoth(any, Complement.OfPower(Math.Min(outside, 1), count));
            }

            return any;
        }));
    }

    internal double Lower(double w) => Math.Min(1, Sum(0, z =>
    {
        var all = 1.0;
        foreach (var (shared, own, count) in _groups)
        {
            var inside = Normal.RawUpper(((shared * z) - w) / own);
            if (_absolute)
            {
                inside -= Normal.RawUpper(((shared * z) + w) / own);
            }

            all *= Complement.Power(Math.Max(inside, 0), count);
        }

        return all;
    }));

    /// <summary>Trapezoidal rule; the mass of a far tail sits near z = λ w, and with absolute values also at -λ w, by symmetry.</summary>
    private double Sum(double w, Func<double, double> part)
    {
        var last = (int)Math.Ceiling((Reach + (_largestShared * w)) / _step);
        var first = _absolute ? 1 : -(int)Math.Ceiling(Reach / _step);
        var sum = 0.0;
        for (var node = first; node <= last; node++)
        {
            var z = node * _step;
            sum += Normal.RawDensity(z) * part(z);
        }

        return _step * (_absolute ? (2 * sum) + (Normal.RawDensity(0) * part(0)) : sum);
    }
}
