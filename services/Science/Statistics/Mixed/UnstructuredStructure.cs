using System.Globalization;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>Free numbers are the lower triangle of a Cholesky factor, diagonal on a log scale, whose first entry is 1.</summary>
internal sealed class UnstructuredStructure() : CovarianceStructure("unstructured")
{
    internal override int ShapeCount(int pulls) => (pulls * (pulls + 1) / 2) - 1;

    internal override IReadOnlyList<double[]> Starts(int pulls)
    {
        var start = new double[ShapeCount(pulls)];
        for (int row = 1, next = 0; row < pulls; row++)
        {
            // Half the variance shared by all pulls: the first column of the factor, then what remains of each diagonal.
            start[next] = 0.5;
            next += row;
            start[next++] = Math.Log(0.8);
        }

        return [start];
    }

    internal override Matrix Shape(ReadOnlySpan<double> free, PullTimes times)
    {
        var factor = new Matrix(times.Count, times.Count);
        factor[0, 0] = 1;
        var next = 0;
        for (var row = 1; row < times.Count; row++)
        {
            for (var column = 0; column < row; column++)
            {
                factor[row, column] = free[next++];
            }

            factor[row, row] = Math.Exp(free[next++]);
        }

        return factor.Times(factor.Transposed());
    }

    internal override IReadOnlyList<NaturalParameter> Natural(ReadOnlySpan<double> free, double variance, PullTimes times)
    {
        var shape = Shape(free, times);
        var parameters = new List<NaturalParameter>();
        for (var first = 0; first < times.Count; first++)
        {
            for (var second = 0; second <= first; second++)
            {
                var (i, j) = (first, second);
                var name = i == j
                    ? string.Create(CultureInfo.InvariantCulture, $"variance at {times[i]}")
                    : string.Create(CultureInfo.InvariantCulture, $"covariance of {times[j]} and {times[i]}");
                parameters.Add(new NaturalParameter(name, variance * shape[i, j],
                    Fill(times.Count, (row, column) => (row == i && column == j) || (row == j && column == i) ? 1 : 0)));
            }
        }

        return parameters;
    }
}
