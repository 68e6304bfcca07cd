using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// Minimises a smooth function of a few variables by BFGS with backtracking.
/// Nocedal and Wright, Numerical Optimization, chapter 6 (from memory).
/// </summary>
internal static class QuasiNewton
{
    private const int StepLimit = 400;
    private const double GradientTolerance = 1e-9;

    /// <summary>Where rounding stops the descent, a gradient below this still counts as a minimum.</summary>
    private const double RoundingTolerance = 1e-5;

    /// <param name="function">Value and gradient; null where the function does not exist.</param>
    /// <param name="start">A point where it exists.</param>
    /// <returns>The minimum, or null where none was reached.</returns>
    public static double[]? Minimise(Func<double[], (double Value, double[] Gradient)?> function, double[] start)
    {
        if (function(start) is not { } here || start.Length == 0)
        {
            return start.Length == 0 ? start : null;
        }

        var point = start;
        var inverse = Identity(start.Length);
        for (var step = 0; step < StepLimit; step++)
        {
            if (Largest(here.Gradient) <= GradientTolerance * (1 + Math.Abs(here.Value)))
            {
                return point;
            }

            var direction = Descent(inverse, here.Gradient);
            if (Search(function, point, here, direction) is not { } next)
            {
                if (Largest(here.Gradient) <= RoundingTolerance * (1 + Math.Abs(here.Value)))
                {
                    return point;
                }

                if (IsIdentity(inverse))
                {
                    return null;
                }

                inverse = Identity(start.Length);
                continue;
            }

            Update(inverse, Difference(next.Point, point), Difference(next.Gradient, here.Gradient), step == 0);
            (point, here) = (next.Point, (next.Value, next.Gradient));
        }

        return null;
    }

    private static double[] Descent(Matrix inverse, double[] gradient)
    {
        double[] direction = [.. inverse.Times(gradient).Select(value => -value)];
        var length = Math.Sqrt(VectorKernel.Dot(direction, direction));
        // The free numbers are logits and relative standard deviations: a step beyond 2 leaves the region where curvature means anything.
        return length > 2 ? [.. direction.Select(value => value * 2 / length)] : direction;
    }

    private static (double[] Point, double Value, double[] Gradient)? Search(
        Func<double[], (double Value, double[] Gradient)?> function, double[] point, (double Value, double[] Gradient) here, double[] direction)
    {
        var slope = VectorKernel.Dot(direction, here.Gradient);
        if (slope >= 0)
        {
            return null;
        }

        for (var length = 1.0; length > 1e-10; length *= 0.4)
        {
            double[] candidate = [.. point.Zip(direction, (value, move) => value + (length * move))];
            if (function(candidate) is { } there && there.Value <= here.Value + (1e-4 * length * slope))
            {
                return (candidate, there.Value, there.Gradient);
            }
        }

        return null;
    }

    private static void Update(Matrix inverse, double[] move, double[] change, bool first)
    {
        var curvature = VectorKernel.Dot(move, change);
        if (curvature <= 1e-12 * VectorKernel.Dot(change, change))
        {
            return;
        }

        if (first)
        {
            var scale = curvature / VectorKernel.Dot(change, change);
            for (var index = 0; index < move.Length; index++)
            {
                inverse[index, index] = scale;
            }
        }

        var turned = inverse.Times(change);
        var weight = (1 + (VectorKernel.Dot(change, turned) / curvature)) / curvature;
        for (var row = 0; row < move.Length; row++)
        {
            for (var column = 0; column < move.Length; column++)
            {
                inverse[row, column] += (weight * move[row] * move[column]) - (((turned[row] * move[column]) + (move[row] * turned[column])) / curvature);
            }
        }
    }

    private static Matrix Identity(int size)
    {
        var matrix = new Matrix(size, size);
        for (var index = 0; index < size; index++)
        {
            matrix[index, index] = 1;
        }

        return matrix;
    }

    private static bool IsIdentity(Matrix matrix)
    {
        var difference = Identity(matrix.Rows);
        difference.Add(matrix, -1);
        return difference.InnerProduct(difference) == 0;
    }

    private static double[] Difference(double[] left, double[] right) => [.. left.Zip(right, (a, b) => a - b)];

    private static double Largest(double[] values) => values.Max(Math.Abs);
}
