using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// Minimises a smooth function of a few variables by BFGS with backtracking.
/// Nocedal and Wright, Numerical Optimization, chapter 6 (from memory).
/// </summary>
internal static class QuasiNewton
{
    private const int StepLimit = 400;

    /// <summary>A promised descent this small, relative to the value, is lost in rounding: the minimum is reached.</summary>
    private const double Settled = 1e-14;

    /// <summary>Where no step along the descent helps any more, a promise below this still counts as reached.</summary>
    private const double NearlySettled = 1e-9;

    /// <param name="function">Value, and the gradient on request; null where the function does not exist.</param>
    /// <param name="start">A point where it exists.</param>
    /// <returns>The minimum, or null where none was reached.</returns>
    public static double[]? Minimise(Func<double[], (double Value, Func<double[]> Gradient)?> function, double[] start)
    {
        if (function(start) is not { } first)
        {
            return null;
        }

        var here = (first.Value, Gradient: first.Gradient());
        var point = start;
        var inverse = Identity(start.Length);
        var isFresh = true;
        for (var step = 0; step < StepLimit; step++)
        {
            var direction = Descent(inverse, here.Gradient);
            var promise = -VectorKernel.Dot(direction, here.Gradient);
            if (promise <= Settled * (1 + Math.Abs(here.Value)))
            {
                return point;
            }

            if (Search(function, point, here, direction, promise) is { } next)
            {
                Update(inverse, Difference(next.Point, point), Difference(next.Gradient, here.Gradient), isFresh);
                (point, here, isFresh) = (next.Point, (next.Value, next.Gradient), false);
            }
            else if (isFresh || promise <= NearlySettled * (1 + Math.Abs(here.Value)))
            {
                return promise <= NearlySettled * (1 + Math.Abs(here.Value)) ? point : null;
            }
            else
            {
                (inverse, isFresh) = (Identity(start.Length), true);
            }
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
        Func<double[], (double Value, Func<double[]> Gradient)?> function, double[] point, (double Value, double[] Gradient) here, double[] direction, double promise)
    {
        for (var length = 1.0; length > 1e-10; length *= 0.4)
        {
            double[] candidate = [.. point.Zip(direction, (value, move) => value + (length * move))];
            if (function(candidate) is { } there && there.Value <= here.Value - (1e-4 * length * promise))
            {
                return (candidate, there.Value, there.Gradient());
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

    private static double[] Difference(double[] left, double[] right) => [.. left.Zip(right, (a, b) => a - b)];
}
