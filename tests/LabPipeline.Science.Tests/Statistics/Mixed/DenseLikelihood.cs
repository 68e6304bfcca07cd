namespace LabPipeline.Science.Tests.Statistics.Mixed;

/// <summary>
/// The restricted log-likelihood as its definition has it (Patterson and Thompson 1971):
/// -2 l = (n - p) ln 2 pi + ln |V| + ln |X'V^-1X| + y'Py, with the whole n x n matrix and plain elimination. Slow, and nothing in common
/// with the product's way of getting there.
/// </summary>
internal static class DenseLikelihood
{
    public static double Of(double[,] covariance, double[][] columns, double[] response)
    {
        var (n, p) = (response.Length, columns.Length);
        var (logV, solved) = Solve(covariance, [.. columns, response]);
        var normal = new double[p, p];
        var right = new double[p];
        for (var i = 0; i < p; i++)
        {
            for (var j = 0; j < p; j++)
            {
                normal[i, j] = Dot(columns[i], solved[j]);
            }

            right[i] = Dot(columns[i], solved[p]);
        }

        var (logNormal, effects) = Solve(normal, [right]);
        var square = Dot(response, solved[p]) - Dot(right, effects[0]);
        return -0.5 * (((n - p) * Math.Log(2 * Math.PI)) + logV + logNormal + square);
    }

    /// <summary>Gauss elimination with pivots; log of the absolute determinant and the solution for each right side.</summary>
    public static (double LogDeterminant, double[][] Solutions) Solve(double[,] matrix, double[][] rightSides)
    {
        var size = matrix.GetLength(0);
        var a = (double[,])matrix.Clone();
        var b = rightSides.Select(side => (double[])side.Clone()).ToArray();
        var log = 0.0;
        for (var step = 0; step < size; step++)
        {
            Swap(a, b, step, Enumerable.Range(step, size - step).MaxBy(row => Math.Abs(a[row, step])));
            log += Math.Log(Math.Abs(a[step, step]));
            for (var row = step + 1; row < size; row++)
            {
                var factor = a[row, step] / a[step, step];
                for (var column = step; column < size; column++)
                {
                    a[row, column] -= factor * a[step, column];
                }

                foreach (var side in b)
                {
                    side[row] -= factor * side[step];
                }
            }
        }

        foreach (var side in b)
        {
            for (var row = size - 1; row >= 0; row--)
            {
                side[row] = (side[row] - Enumerable.Range(row + 1, size - row - 1).Sum(column => a[row, column] * side[column])) / a[row, row];
            }
        }

        return (log, b);
    }

    private static void Swap(double[,] a, double[][] b, int first, int second)
    {
        for (var column = 0; column < a.GetLength(1); column++)
        {
            (a[first, column], a[second, column]) = (a[second, column], a[first, column]);
        }

        foreach (var side in b)
        {
            (side[first], side[second]) = (side[second], side[first]);
        }
    }

    private static double Dot(double[] left, double[] right) => left.Zip(right, (a, b) => a * b).Sum();
}
