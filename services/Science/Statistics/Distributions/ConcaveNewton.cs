namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>
/// Newton's method on the logarithm of a tail probability. For log-concave densities that logarithm is concave,
/// so after the first step every iterate lies on one side of the root and no bracket is needed.
/// </summary>
internal static class ConcaveNewton
{
    private const int MostSteps = 200;

    /// <param name="start">Near the centre of the distribution.</param>
    /// <param name="logTarget">ln of the wanted tail probability, at most about ln 1/2.</param>
    /// <param name="tail">ln of the tail at a point, and its slope there.</param>
    internal static double Solve(double start, double logTarget, Func<double, (double Log, double Slope)> tail)
    {
        var point = start;
        var previous = double.PositiveInfinity;
        for (var step = 0; step < MostSteps; step++)
        {
            var (log, slope) = tail(point);
            var move = (log - logTarget) / slope;
            point -= move;
            var size = Math.Abs(move);
            var floor = 2e-16 * Math.Max(1, Math.Abs(point));
            // Rounding keeps the last steps from shrinking for ever; a step that no longer shrinks near the floor is the end.
            if (size <= floor || (size >= previous && size < 1e4 * floor))
            {
                return point;
            }

            previous = size;
        }

        throw new ArithmeticException(FormattableString.Invariant($"No quantile found after {MostSteps} steps for a tail probability of e^{logTarget}."));
    }
}
