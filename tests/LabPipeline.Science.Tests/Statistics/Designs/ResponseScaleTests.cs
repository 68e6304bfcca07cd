using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Tests.Statistics.LinearModels;

namespace LabPipeline.Science.Tests.Statistics.Designs;

public sealed class ResponseScaleTests
{
    /// <summary>Definition of the geometric mean: exp of the mean logarithm; (2 * 8)^(1/2) = 4, (1 * 4)^(1/2) = 2, their ratio 2.</summary>
    [Fact]
    public void Log_WhenMeansComeBack_AreGeometricAndDifferencesRatios()
    {
        var means = Fit(ResponseScale.Log(), [2, 8, 1, 4]).Means("clone");

        var mean = ResponseScale.Log().Mean(means.Find("A").Estimate!, 0.05);
        var ratio = ResponseScale.Log().Difference(means.Difference("A", "B"), 0.05);

        Assert.Equal("geometric mean", mean.Meaning);
        CheckData.Near(4, mean.Value, 1e-12);
        CheckData.Near(2, ratio.Value, 1e-12);
        Assert.Equal("ratio", ratio.Meaning);
        CheckData.Near(ratio.Value * ratio.Value, ratio.Low * ratio.High, 1e-12); // symmetric on the log scale
        CheckData.Near(4, ResponseScale.Log().Back(means.Find("A")), 1e-12);
    }

    [Fact]
    public void Log_WhenAnOffsetIsStated_SaysSoAndTakesItOffAgain()
    {
        var scale = ResponseScale.Log(1);
        var means = Fit(scale, [1, 7, 0, 3]).Means("clone");

        Assert.Contains("value + 1", scale.Statement, StringComparison.Ordinal);
        CheckData.Near(3, scale.Mean(means.Find("A").Estimate!, 0.05).Value, 1e-12);
        Assert.Equal("ratio of (value + 1)", scale.Difference(means.Difference("A", "B"), 0.05).Meaning);
    }

    /// <summary>Empirical logit of 3 of 10: ln(3.5 / 7.5), with c = 0.5 / 11 (Cox 1970, from memory).</summary>
    [Fact]
    public void Logit_WhenAdjustedForTenTubers_IsTheEmpiricalLogit()
    {
        var scale = ResponseScale.Logit(0.5 / 11);

        CheckData.Near(Math.Log(3.5 / 7.5), scale.Transform(0.3), 1e-12);
        CheckData.Near(Math.Log(0.5 / 10.5), scale.Transform(0), 1e-12);
        var means = Fit(scale, [0.3, 0.3, 0.5, 0.5000001]).Means("clone");
        CheckData.Near(0.3, scale.Mean(means.Find("A").Estimate!, 0.05).Value, 1e-6);
        CheckData.Near(3.5 / 7.5, scale.Difference(means.Difference("A", "B"), 0.05).Value, 1e-6);
    }

    [Fact]
    public void Measured_WhenMeansComeBack_ChangesNothing()
    {
        var means = Fit(ResponseScale.Measured, [2, 8, 1, 4]).Means("clone");

        CheckData.Near(5, ResponseScale.Measured.Mean(means.Find("A").Estimate!, 0.05).Value, 1e-12);
        CheckData.Near(2.5, ResponseScale.Measured.Difference(means.Difference("A", "B"), 0.05).Value, 1e-12);
    }

    [Fact]
    public void Transform_WhenTheScaleDoesNotAdmitTheValue_SaysWhatToState()
    {
        Assert.Contains("larger offset", Assert.Throws<ArgumentException>(() => ResponseScale.Log().Transform(0)).Message, StringComparison.Ordinal);
        Assert.Contains("adjustment above 0", Assert.Throws<ArgumentException>(() => ResponseScale.Logit().Transform(1)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ResponseScale.Logit(0.1).Transform(1.2));
        Assert.Throws<ArgumentException>(() => ResponseScale.Measured.Transform(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => ResponseScale.Log(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ResponseScale.Logit(0.5));
    }

    private static LinearFit Fit(ResponseScale scale, double[] values) =>
        LinearModel.Fit(new ModelData([.. values.Select(scale.Transform)], [Factor.InOrderOfAppearance("clone", ["A", "A", "B", "B"])]), Term.Of("clone"));
}
