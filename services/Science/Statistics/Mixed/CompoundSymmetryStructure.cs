using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

internal sealed class CompoundSymmetryStructure() : CovarianceStructure("compound symmetry")
{
    internal override int ShapeCount(int pulls) => 1;

    internal override IReadOnlyList<double[]> Starts(int pulls) => [[0]];

    internal override Matrix Shape(ReadOnlySpan<double> free, PullTimes times)
    {
        var correlation = Correlation(free[0], times.Count);
        return Fill(times.Count, (row, column) => row == column ? 1 : correlation);
    }

    internal override IReadOnlyList<NaturalParameter> Natural(ReadOnlySpan<double> free, double variance, PullTimes times)
    {
        var correlation = Correlation(free[0], times.Count);
        return
        [
            new NaturalParameter("variance of plot", correlation * variance, Fill(times.Count, (_, _) => 1)),
            new NaturalParameter("residual variance", (1 - correlation) * variance, Fill(times.Count, (row, column) => row == column ? 1 : 0)),
        ];
    }

    /// <summary>Between the lowest value m pulls can share, -1/(m - 1), and 1.</summary>
    private static double Correlation(double free, int pulls)
    {
        var lowest = -1.0 / (pulls - 1);
        return lowest + ((1 - lowest) * Logistic(free));
    }
}
