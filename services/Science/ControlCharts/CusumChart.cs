using LabPipeline.Science.Units;

namespace LabPipeline.Science.ControlCharts;

/// <summary>Tabular cumulative sum, for small lasting shifts.</summary>
/// <remarks>
/// S+(t) = max(0, S+(t-1) + x - target - k), S-(t) = max(0, S-(t-1) + target - k - x); out when either exceeds h. k is half the shift to find and
/// h about 4 to 5 sigma, all in the unit of the values. Sources: ISO 7870-4; NIST/SEMATECH e-Handbook 6.3.2.3.
/// </remarks>
public sealed class CusumChart
{
    private readonly decimal _target;
    private readonly decimal _allowance;
    private readonly decimal _interval;

    /// <param name="target">Target value.</param>
    /// <param name="allowance">k, zero or more.</param>
    /// <param name="decisionInterval">h, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public CusumChart(decimal target, decimal allowance, decimal decisionInterval)
    {
        _target = target;
        _allowance = Require.NotNegative(allowance, nameof(allowance));
        _interval = Require.Positive(decisionInterval, nameof(decisionInterval));
    }

    /// <summary>The points for values in time order, starting from zero sums.</summary>
    public IReadOnlyList<CusumPoint> Follow(IEnumerable<decimal> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var points = new List<CusumPoint>();
        var (high, low) = (0m, 0m);
        foreach (var value in values)
        {
            high = Math.Max(0m, high + value - _target - _allowance);
            low = Math.Max(0m, low + _target - _allowance - value);
            points.Add(new CusumPoint(high, low, high > _interval || low > _interval));
        }

        return points;
    }
}
