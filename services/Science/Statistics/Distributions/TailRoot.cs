namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The point where a tail probability takes a given value, by false position with Illinois halving.</summary>
/// <remarks>Works on ln(tail) against arsinh(x): nearly a straight line both in the middle and far out.</remarks>
internal static class TailRoot
{
    private const int MostSteps = 200;
    private const double Tolerance = 1e-13;

    /// <param name="low">A point at or below the answer.</param>
    /// <param name="high">A point at or above the answer.</param>
    /// <param name="target">The wanted tail probability.</param>
    /// <param name="tail">A monotone tail probability.</param>
    internal static double Find(double low, double high, double target, Func<double, double> tail)
    {
        var margin = 1e-6 * Math.Max(1, Math.Abs(high));
        var (left, right) = (Math.Asinh(low - margin), Math.Asinh(high + margin));
        var (atLeft, atRight) = (Miss(left), Miss(right));
        if (atLeft * atRight > 0)
        {
            throw new ArithmeticException(FormattableString.Invariant($"The tail probability {target} is not between those at {low} and {high}."));
        }

        for (var step = 0; step < MostSteps && Math.Abs(right - left) > Tolerance * Math.Max(1, Math.Abs(right)); step++)
        {
            var middle = left - (atLeft * (right - left) / (atRight - atLeft));
            var atMiddle = Miss(middle);
            if (Math.Abs(atMiddle) < Tolerance)
            {
                return Math.Sinh(middle);
            }

            if (atMiddle * atRight < 0)
            {
                (left, atLeft) = (right, atRight);
            }
            else
            {
                atLeft *= 0.5;
            }

            (right, atRight) = (middle, atMiddle);
        }

        return Math.Sinh(right);

        double Miss(double x) => Math.Log(Math.Max(tail(Math.Sinh(x)), double.Epsilon) / target);
    }
}
