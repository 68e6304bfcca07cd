using System.Collections.Concurrent;

namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>
/// The mean of g(q s) when s is an independent estimate of a standard deviation of 1: s² = χ²(df) / df. It turns
/// the distribution of a normal statistic into its studentised form.
/// </summary>
/// <remarks>
/// In v = ln s the integrand is analytic and falls off at both ends, so the trapezoidal rule converges
/// exponentially; the step is chosen so that halving it changes nothing in the twelfth digit (see the tests). The rule may
/// start anywhere: its points are laid so that every q asks g for the same values |q s| = e^(j step), each computed once.
/// </remarks>
internal sealed class ScaleMixture
{
    private const double WidestStep = 0.15;
    private const double StepPerDeviation = 0.7;

    private readonly double _df;
    private readonly int _factors;
    private readonly Func<double, double> _g;
    private readonly Func<double, double> _weight;
    private readonly double _step;
    private readonly ConcurrentDictionary<(int Index, bool Negative), double> _known = [];

    /// <param name="df">Degrees of freedom of s; infinity gives g(q).</param>
    /// <param name="factors">How many probabilities g multiplies: more of them make it steeper.</param>
    /// <param name="g">A tail probability of the normal statistic.</param>
    internal ScaleMixture(double df, int factors, Func<double, double> g)
    {
        _df = df;
        _factors = factors;
        _g = g;
        _weight = double.IsPositiveInfinity(df) ? _ => 1 : Weight(df);
        _step = Math.Min(WidestStep, StepPerDeviation / Math.Sqrt(10 + (2 * (df + factors))));
    }

    /// <param name="q">The studentised value.</param>
    internal double Mean(double q)
    {
        if (double.IsPositiveInfinity(_df) || q == 0)
        {
            return _g(q);
        }

        var origin = Math.Log(Math.Abs(q));
        var centre = (int)Math.Round(origin / _step);
        var scale = Math.Min(Math.Abs(q), 1e100);
        // A tail of the normal statistic pulls the mass of the integrand from s = 1 down to about this s.
        var pulled = -0.5 * SmallArguments.Log1p(_factors * scale * scale / _df);
        var first = (int)Math.Floor(pulled / _step);
        var sum = 0.0;
        for (var index = first; index <= 0; index++)
        {
            sum += Term(index);
        }

        sum += Run(Term, first - 1, -1, sum);
        sum += Run(Term, 1, 1, sum);
        return _step * sum;

        double Term(int index)
        {
            var weight = _weight(((centre + index) * _step) - origin);
            return weight == 0 ? 0 : weight * At(centre + index, q < 0);
        }
    }

    private double At(int index, bool negative)
    {
        if (!_known.TryGetValue((index, negative), out var value))
        {
            var size = Math.Exp(index * _step);
            _known[(index, negative)] = value = _g(negative ? -size : size);
        }

        return value;
    }

    /// <summary>Terms from a start in one direction until they fall and no longer count.</summary>
    private static double Run(Func<int, double> term, int start, int direction, double already)
    {
        var (total, previous) = (0.0, 0.0);
        for (var index = start; ; index += direction)
        {
            var next = term(index);
            total += next;
            if (next <= previous && next <= 1e-16 * (already + total))
            {
                return total;
            }

            previous = next;
        }
    }

    /// <summary>The density of v = ln s.</summary>
    private static Func<double, double> Weight(double df)
    {
        var half = 0.5 * df;
        var constant = 2 * Math.Exp(SpecialFunctions.LogGammaDensity(half, half));
        return v =>
        {
            var deviance = SmallArguments.LogDeviance(Math.Exp(2 * v), 1, SmallArguments.Expm1(2 * v));
            return constant * Math.Exp(-half * deviance);
        };
    }
}
