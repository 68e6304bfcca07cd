using LabPipeline.Science.Units;

namespace LabPipeline.Science.ControlCharts;

/// <summary>Exponentially weighted moving average, for slow drift: reagent, lamp, enzyme membrane.</summary>
/// <remarks>
/// z(t) = lambda x(t) + (1 - lambda) z(t-1), z(0) = target; limits target ± L sigma sqrt(lambda/(2 - lambda) (1 - (1 - lambda)^(2t))), exact
/// from the first point. Sources: ISO 7870-6; NIST/SEMATECH e-Handbook 6.3.2.4.
/// </remarks>
public sealed class EwmaChart
{
    private readonly decimal _target;
    private readonly decimal _sigma;
    private readonly decimal _lambda;
    private readonly decimal _width;

    /// <param name="target">Centre line, in the unit of the values.</param>
    /// <param name="sigma">Standard deviation of a single value, above zero.</param>
    /// <param name="lambda">Weight of the newest value, above 0 and up to 1; 0.2 to 0.3 is usual.</param>
    /// <param name="width">L, the limits' distance in standard errors, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public EwmaChart(decimal target, decimal sigma, decimal lambda, decimal width = 3m)
    {
        _target = target;
        _sigma = Require.Positive(sigma, nameof(sigma));
        _lambda = Require.Between(Require.Positive(lambda, nameof(lambda)), 0m, 1m, nameof(lambda));
        _width = Require.Positive(width, nameof(width));
    }

    /// <summary>The points for values in time order.</summary>
    public IReadOnlyList<EwmaPoint> Follow(IEnumerable<decimal> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var points = new List<EwmaPoint>();
        var (average, memory) = (_target, 1m);
        foreach (var value in values)
        {
            average = (_lambda * value) + ((1m - _lambda) * average);
            memory *= (1m - _lambda) * (1m - _lambda);
            var error = _sigma * DecimalRoot.Sqrt(_lambda / (2m - _lambda) * (1m - memory));
            points.Add(new EwmaPoint(average, new ControlLimits(_target, error, _target - (_width * error), _target + (_width * error))));
        }

        return points;
    }
}
