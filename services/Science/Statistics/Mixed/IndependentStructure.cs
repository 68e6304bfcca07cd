using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

internal sealed class IndependentStructure() : CovarianceStructure("independent rows")
{
    internal override int ShapeCount(int pulls) => 0;

    internal override IReadOnlyList<double[]> Starts(int pulls) => [[]];

    internal override Matrix Shape(ReadOnlySpan<double> free, PullTimes times) => Identity(times.Count);

    internal override IReadOnlyList<NaturalParameter> Natural(ReadOnlySpan<double> free, double variance, PullTimes times) =>
        [new NaturalParameter("residual variance", variance, Identity(times.Count))];

    private static Matrix Identity(int size) => Fill(size, (row, column) => row == column ? 1 : 0);
}
