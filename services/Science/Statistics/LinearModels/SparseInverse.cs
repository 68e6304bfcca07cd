namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>The inverse of a square matrix most of whose cells are zero, by elimination with row pivots that passes over the zeros.</summary>
internal static class SparseInverse
{
    /// <param name="matrix">Square and regular; a matrix that a factorisation found to be of full rank.</param>
    public static Matrix Of(Matrix matrix)
    {
        var work = matrix.Scaled(1);
        var inverse = new Matrix(matrix.Rows, matrix.Rows);
        var order = Enumerable.Range(0, matrix.Rows).ToArray();
        for (var row = 0; row < matrix.Rows; row++)
        {
            inverse[row, row] = 1;
        }

        for (var step = 0; step < order.Length; step++)
        {
            var largest = Enumerable.Range(step, order.Length - step).MaxBy(place => Math.Abs(work[order[place], step]));
            (order[step], order[largest]) = (order[largest], order[step]);
            Clear(work, inverse, order, step);
        }

        return inverse.At(order, [.. Enumerable.Range(0, matrix.Rows)]);
    }

    /// <summary>Makes the pivot 1 and everything else in its column 0.</summary>
    private static void Clear(Matrix work, Matrix inverse, int[] order, int step)
    {
        var source = work.Row(order[step]);
        var right = inverse.Row(order[step]);
        var pivot = 1 / source[step];
        foreach (ref var cell in source)
        {
            cell *= pivot;
        }

        foreach (ref var cell in right)
        {
            cell *= pivot;
        }

        for (var place = 0; place < order.Length; place++)
        {
            var factor = work[order[place], step];
            if (place != step && factor != 0)
            {
                VectorKernel.AddScaled(work.Row(order[place]), -factor, source);
                VectorKernel.AddScaled(inverse.Row(order[place]), -factor, right);
            }
        }
    }
}
