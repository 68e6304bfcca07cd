using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

internal sealed class ExponentialStructure() : CovarianceStructure("exponential in time (AR(1) when evenly spaced)")
{
    internal override int ShapeCount(int pulls) => 1;

    internal override IReadOnlyList<double[]> Starts(int pulls) => [[0]];

    internal override Matrix Shape(ReadOnlySpan<double> free, PullTimes times) => Decay(Logistic(free[0]), times);

    internal override IReadOnlyList<NaturalParameter> Natural(ReadOnlySpan<double> free, double variance, PullTimes times)
    {
        var correlation = Logistic(free[0]);
        return
        [
            new NaturalParameter("residual variance", variance, Decay(correlation, times)),
            new NaturalParameter("correlation at the shortest interval", correlation, DecayDerivative(correlation, variance, times)),
        ];
    }

    internal static Matrix Decay(double correlation, PullTimes times) =>
        Fill(times.Count, (row, column) => Math.Pow(correlation, times.Lag(row, column)));

    internal static Matrix DecayDerivative(double correlation, double variance, PullTimes times) =>
        Fill(times.Count, (row, column) => row == column ? 0 : variance * times.Lag(row, column) * Math.Pow(correlation, times.Lag(row, column) - 1));
}
