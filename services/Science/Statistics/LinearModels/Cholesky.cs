namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A = LL' for a symmetric positive definite matrix.</summary>
internal sealed class Cholesky
{
    private readonly Matrix _lower;

    private Cholesky(Matrix lower) => _lower = lower;

    public Matrix Lower => _lower;

    /// <summary>Log of the determinant of A.</summary>
    public double LogDeterminant
    {
        get
        {
            var sum = 0.0;
            for (var row = 0; row < _lower.Rows; row++)
            {
                sum += Math.Log(_lower[row, row]);
            }

            return 2 * sum;
        }
    }

    /// <returns>Null where A is not positive definite to working precision.</returns>
    public static Cholesky? TryFactor(Matrix symmetric)
    {
        var lower = new Matrix(symmetric.Rows, symmetric.Rows);
        for (var row = 0; row < symmetric.Rows; row++)
        {
            var target = lower.Row(row);
            for (var column = 0; column < row; column++)
            {
                var known = VectorKernel.Dot(target[..column], lower.Row(column)[..column]);
                target[column] = (symmetric[row, column] - known) / lower[column, column];
            }

            var pivot = symmetric[row, row] - VectorKernel.Dot(target[..row], target[..row]);
            if (!(pivot > 1e-14 * Math.Abs(symmetric[row, row])))
            {
                return null;
            }

            target[row] = Math.Sqrt(pivot);
        }

        return new Cholesky(lower);
    }

    /// <summary>Solves LX = B for all columns of B at once.</summary>
    public Matrix SolveLower(Matrix right)
    {
        var solution = new Matrix(right.Rows, right.Columns);
        for (var row = 0; row < right.Rows; row++)
        {
            var target = solution.Row(row);
            right.Row(row).CopyTo(target);
            for (var known = 0; known < row; known++)
            {
                if (_lower[row, known] != 0)
                {
                    VectorKernel.AddScaled(target, -_lower[row, known], solution.Row(known));
                }
            }

            for (var column = 0; column < target.Length; column++)
            {
                target[column] /= _lower[row, row];
            }
        }

        return solution;
    }

    /// <summary>Solves L'X = B for all columns of B at once.</summary>
    public Matrix SolveUpper(Matrix right)
    {
        var solution = new Matrix(right.Rows, right.Columns);
        for (var row = right.Rows - 1; row >= 0; row--)
        {
            var target = solution.Row(row);
            right.Row(row).CopyTo(target);
            for (var known = row + 1; known < right.Rows; known++)
            {
                VectorKernel.AddScaled(target, -_lower[known, row], solution.Row(known));
            }

            for (var column = 0; column < target.Length; column++)
            {
                target[column] /= _lower[row, row];
            }
        }

        return solution;
    }

    /// <summary>Solves Lx = b.</summary>
    public double[] SolveLower(ReadOnlySpan<double> right)
    {
        var solution = new double[right.Length];
        for (var row = 0; row < right.Length; row++)
        {
            var known = VectorKernel.Dot(_lower.Row(row)[..row], solution.AsSpan(0, row));
            solution[row] = (right[row] - known) / _lower[row, row];
        }

        return solution;
    }

    /// <summary>Solves Ax = b.</summary>
    public double[] Solve(ReadOnlySpan<double> right)
    {
        var solution = SolveLower(right);
        for (var row = solution.Length - 1; row >= 0; row--)
        {
            solution[row] /= _lower[row, row];
            VectorKernel.AddScaled(solution.AsSpan(0, row), -solution[row], _lower.Row(row)[..row]);
        }

        return solution;
    }

    public Matrix Inverse()
    {
        var size = _lower.Rows;
        var inverseLower = new Matrix(size, size);
        for (var row = 0; row < size; row++)
        {
            var target = inverseLower.Row(row)[..(row + 1)];
            for (var known = 0; known < row; known++)
            {
                VectorKernel.AddScaled(target[..(known + 1)], -_lower[row, known], inverseLower.Row(known)[..(known + 1)]);
            }

            target[row] = 1;
            for (var column = 0; column <= row; column++)
            {
                target[column] /= _lower[row, row];
            }
        }

        return CrossProduct(inverseLower);
    }

    /// <summary>M'M for a lower triangular M, touching neither its zeros nor the mirrored half twice.</summary>
    private static Matrix CrossProduct(Matrix lower)
    {
        var result = new Matrix(lower.Rows, lower.Rows);
        for (var row = 0; row < lower.Rows; row++)
        {
            var target = result.Row(row)[..(row + 1)];
            for (var inner = row; inner < lower.Rows; inner++)
            {
                VectorKernel.AddScaled(target, lower[inner, row], lower.Row(inner)[..(row + 1)]);
            }

            for (var column = 0; column < row; column++)
            {
                result[column, row] = target[column];
            }
        }

        return result;
    }
}
