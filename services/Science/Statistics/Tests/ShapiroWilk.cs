using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Tests;

/// <summary>Do values, usually residuals, look normal? A help beside the plots, not a gate.</summary>
/// <remarks>
/// W = (Σ aᵢ x₍ᵢ₎)² / Σ(x - mean)² with Royston's approximate weights; p from his normalising transformation (Royston 1995,
/// Applied Statistics 44:547, algorithm AS R94). Polynomial constants as published there.
/// </remarks>
public static class ShapiroWilk
{
    private const int MostValues = 5000;

    private static readonly double[] LargestWeight = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056];
    private static readonly double[] SecondWeight = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633];
    private static readonly double[] SmallMean = [0.544, -0.39978, 0.025054, -6.714e-4];
    private static readonly double[] SmallLogDeviation = [1.3822, -0.77857, 0.062767, -0.0020322];
    private static readonly double[] LargeMean = [-1.5861, -0.31082, -0.083751, 0.0038915];
    private static readonly double[] LargeLogDeviation = [-0.4803, -0.082676, 0.0030302];
    private static readonly double[] SmallLimit = [-2.273, 0.459];

    /// <param name="values">3 to 5000 finite values, in any order.</param>
    /// <returns>Statistic W, 0 to 1; Df1 is the number of values; small P speaks against normality.</returns>
    /// <exception cref="ArgumentException">Too few or too many values, or one that is not finite.</exception>
    /// <exception cref="NotEstimableException">All values are equal.</exception>
    public static TestOutcome Of(IReadOnlyList<double> values)
    {
        Sample.Check(values, 3, "The sample");
        if (values.Count > MostValues)
        {
            throw new ArgumentException(Sample.Text($"The sample has {values.Count} values; the approximation holds up to {MostValues}."), nameof(values));
        }

        if (Sample.AllEqual(values))
        {
            throw new NotEstimableException("Shapiro-Wilk W", Sample.Text($"all {values.Count} values are equal to {values[0]}"));
        }

        var sorted = values.Order().ToArray();
        var shortfall = OneMinusW(sorted, Weights(sorted.Length));
        return new TestOutcome("Shapiro-Wilk", 1 - shortfall, sorted.Length, null, PValue(shortfall, sorted.Length));
    }

    /// <summary>The upper half of the antisymmetric weights, largest first.</summary>
    private static double[] Weights(int n)
    {
        if (n == 3)
        {
            return [Math.Sqrt(0.5)];
        }

        var scores = new double[n / 2];
        for (var index = 0; index < scores.Length; index++)
        {
            scores[index] = -Normal.Quantile((index + 1 - 0.375) / (n + 0.25));
        }

        var squares = 2 * scores.Sum(score => score * score);
        var root = 1 / Math.Sqrt(n);
        var weights = new double[scores.Length];
        weights[0] = Polynomial(LargestWeight, root) + (scores[0] / Math.Sqrt(squares));
        var given = 1;
        if (n > 5)
        {
            weights[1] = Polynomial(SecondWeight, root) + (scores[1] / Math.Sqrt(squares));
            given = 2;
        }

        var left = squares - (2 * scores.Take(given).Sum(score => score * score));
        var factor = Math.Sqrt(left / (1 - (2 * weights.Take(given).Sum(weight => weight * weight))));
        for (var index = given; index < weights.Length; index++)
        {
            weights[index] = scores[index] / factor;
        }

        return weights;
    }

    /// <summary>1 - W as (√SS - b)(√SS + b) / SS, which keeps its digits when W is near 1.</summary>
    private static double OneMinusW(double[] sorted, double[] weights)
    {
        var squares = Moments.Of(sorted).SumOfSquares;
        var best = 0.0;
        var norm = 0.0;
        for (var index = 0; index < weights.Length; index++)
        {
            best += weights[index] * (sorted[^(index + 1)] - sorted[index]);
            norm += 2 * weights[index] * weights[index];
        }

        var length = Math.Sqrt(squares * norm);
        return Math.Max(0, (length - best) * (length + best) / (length * length));
    }

    private static double PValue(double oneMinusW, int n)
    {
        if (n == 3)
        {
            // Exact for three values: W runs from 3/4 to 1.
            var w = 1 - oneMinusW;
            return Math.Clamp(6 / Math.PI * (Math.Asin(Math.Sqrt(w)) - Math.Asin(Math.Sqrt(0.75))), 0, 1);
        }

        var y = Math.Log(Math.Max(oneMinusW, double.Epsilon));
        if (n <= 11)
        {
            var limit = Polynomial(SmallLimit, n);
            return y >= limit ? 0 : Normal.Upper((-Math.Log(limit - y) - Polynomial(SmallMean, n)) / Math.Exp(Polynomial(SmallLogDeviation, n)));
        }

        var size = Math.Log(n);
        return Normal.Upper((y - Polynomial(LargeMean, size)) / Math.Exp(Polynomial(LargeLogDeviation, size)));
    }

    private static double Polynomial(double[] coefficients, double x) => coefficients.Reverse().Aggregate(0.0, (sum, c) => (sum * x) + c);
}
