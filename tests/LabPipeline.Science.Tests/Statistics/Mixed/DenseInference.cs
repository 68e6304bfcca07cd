namespace LabPipeline.Science.Tests.Statistics.Mixed;

/// <summary>
/// Standard error and degrees of freedom of one combination of fixed effects as Kenward and Roger 1997 define them (from memory), written out with
/// n x n matrices and plain elimination. Slow, and nothing in common with the product's way of getting there.
/// </summary>
internal static class DenseInference
{
    /// <param name="covarianceOf">The covariance of the rows by its parameters.</param>
    /// <param name="parameters">Where it is taken.</param>
    /// <param name="columns">Columns of X.</param>
    /// <param name="weights">The combination.</param>
    public static (double StandardError, double Df) Of(Func<double[], double[,]> covarianceOf, double[] parameters, double[][] columns, double[] weights)
    {
        var inverse = Inverse(covarianceOf(parameters));
        double[][,] slopes = [.. parameters.Select((_, index) => Slope(covarianceOf, parameters, index))];
        var x = Turn(columns);
        var ux = Times(inverse, x);
        var phi = Inverse(Times(Turn(x), ux));
        double[][,] first = [.. slopes.Select(slope => Times(Turn(ux), Times(slope, ux)))];
        var projection = Plus(inverse, Times(Times(ux, phi), Turn(ux)), -1);
        var information = new double[parameters.Length, parameters.Length];
        foreach (var (i, j) in Pairs(parameters.Length))
        {
            information[i, j] = 0.5 * Trace(Times(Times(projection, slopes[i]), Times(projection, slopes[j])));
        }

        var uncertainty = Inverse(information);
        var correction = new double[columns.Length, columns.Length];
        foreach (var (i, j) in Pairs(parameters.Length))
        {
            var second = Times(Turn(ux), Times(slopes[i], Times(inverse, Times(slopes[j], ux))));
            correction = Plus(correction, Plus(second, Times(first[i], Times(phi, first[j])), -1), uncertainty[i, j]);
        }

        var plain = Form(phi, weights);
        double[] gradient = [.. first.Select(one => Form(Times(phi, Times(one, phi)), weights))];
        var spread = Pairs(parameters.Length).Sum(pair => gradient[pair.I] * uncertainty[pair.I, pair.J] * gradient[pair.J]);
        return (Math.Sqrt(plain + (2 * Form(Times(phi, Times(correction, phi)), weights))), 2 * plain * plain / spread);
    }

    private static double[,] Slope(Func<double[], double[,]> covarianceOf, double[] parameters, int index)
    {
        var step = 1e-4 * Math.Max(0.01, Math.Abs(parameters[index]));
        double[] Moved(double by) => [.. parameters.Select((value, place) => place == index ? value + by : value)];
        var difference = Plus(covarianceOf(Moved(step)), covarianceOf(Moved(-step)), -1);
        return Plus(new double[difference.GetLength(0), difference.GetLength(1)], difference, 1 / (2 * step));
    }

    private static IEnumerable<(int I, int J)> Pairs(int count) => Enumerable.Range(0, count).SelectMany(i => Enumerable.Range(0, count).Select(j => (i, j)));

    private static double[,] Inverse(double[,] matrix)
    {
        var size = matrix.GetLength(0);
        return Turn(DenseLikelihood.Solve(matrix, [.. Enumerable.Range(0, size).Select(one => Enumerable.Range(0, size).Select(row => row == one ? 1.0 : 0.0).ToArray())]).Solutions);
    }

    /// <summary>Columns side by side.</summary>
    private static double[,] Turn(double[][] columns)
    {
        var matrix = new double[columns[0].Length, columns.Length];
        foreach (var (column, values) in columns.Index())
        {
            for (var row = 0; row < values.Length; row++)
            {
                matrix[row, column] = values[row];
            }
        }

        return matrix;
    }

    private static double[,] Turn(double[,] matrix) => Make(matrix.GetLength(1), matrix.GetLength(0), (row, column) => matrix[column, row]);

    private static double[,] Times(double[,] left, double[,] right)
    {
        var inner = left.GetLength(1);
        return Make(left.GetLength(0), right.GetLength(1), (row, column) =>
        {
            var sum = 0.0;
            for (var index = 0; index < inner; index++)
            {
                sum += left[row, index] * right[index, column];
            }

            return sum;
        });
    }

    private static double[,] Plus(double[,] left, double[,] right, double scale) =>
        Make(left.GetLength(0), left.GetLength(1), (row, column) => left[row, column] + (scale * right[row, column]));

    private static double Form(double[,] matrix, double[] weights) =>
        Pairs(weights.Length).Sum(pair => weights[pair.I] * matrix[pair.I, pair.J] * weights[pair.J]);

    private static double Trace(double[,] matrix) => Enumerable.Range(0, matrix.GetLength(0)).Sum(index => matrix[index, index]);

    private static double[,] Make(int rows, int columns, Func<int, int, double> value)
    {
        var matrix = new double[rows, columns];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                matrix[row, column] = value(row, column);
            }
        }

        return matrix;
    }
}
