using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The plot variance is the square of a free number, so it can reach zero without a boundary in the way.</summary>
internal sealed class PlotPlusExponentialStructure() : CovarianceStructure("plot variance plus exponential in time")
{
    internal override int ShapeCount(int pulls) => 2;

    internal override IReadOnlyList<double[]> Starts(int pulls) => [[0.7, -1], [0.3, 1.5]];

    internal override Matrix Shape(ReadOnlySpan<double> free, PullTimes times)
    {
        var shape = ExponentialStructure.Decay(Logistic(free[1]), times);
        var plot = free[0] * free[0];
        shape.Add(Fill(times.Count, (_, _) => 1), plot);
        return shape;
    }

    internal override IReadOnlyList<NaturalParameter> Natural(ReadOnlySpan<double> free, double variance, PullTimes times)
    {
        var correlation = Logistic(free[1]);
        return
        [
            new NaturalParameter("variance of plot", free[0] * free[0] * variance, Fill(times.Count, (_, _) => 1)),
            new NaturalParameter("residual variance", variance, ExponentialStructure.Decay(correlation, times)),
            new NaturalParameter("correlation at the shortest interval", correlation, ExponentialStructure.DecayDerivative(correlation, variance, times)),
        ];
    }
}
