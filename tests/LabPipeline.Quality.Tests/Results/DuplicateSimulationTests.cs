using LabPipeline.Quality.Results;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;
using LabPipeline.Science.Units;

namespace LabPipeline.Quality.Tests.Results;

/// <summary>How often good duplicates are flagged: 2,000 seasons of 384 pairs drawn from the very s_r they are judged by.</summary>
public sealed class DuplicateSimulationTests(ITestOutputHelper output)
{
    private const int Seasons = 2_000;
    private const int PairsASeason = 384;
    private const double Sd = 0.002;

    /// <summary>P(|d| > 2.8 s_r) with d normal of standard deviation s_r sqrt 2: 2 (1 - Phi(2.8 / sqrt 2)) = 2 (1 - Phi(1.979899)).</summary>
    /// <remarks>Source: tables of the normal distribution, 2 (1 - Phi(1.98)) = 0.0477; ISO 5725-6, 4.1.4 rounds it to 5 %.</remarks>
    private const double Expected = 0.047715;

    [Fact]
    public void Duplicates_DrawnFromTheTrueRepeatability_AreFlaggedLessThanOneTimeInTwenty()
    {
        var model = new RepeatabilityModel(QuantityCatalogue.Glucose, (decimal)Sd, 0m, false, "true");
        var random = new Random(20261125);
        var flagged = 0;
        var worst = 0;
        for (var season = 0; season < Seasons; season++)
        {
            var own = Enumerable.Range(0, PairsASeason).Count(_ => IsFlagged(model, random));
            flagged += own;
            worst = Math.Max(worst, own);
        }

        var rate = flagged / (double)(Seasons * PairsASeason);
        output.WriteLine(FormattableString.Invariant($"theoretical {Expected:P3}, measured {rate:P3} over {Seasons} seasons, worst season {worst} of {PairsASeason}"));
        Assert.True(rate <= 0.05, FormattableString.Invariant($"{rate:P3} flagged"));

        // Standard error of the rate: sqrt(p (1 - p) / 768,000) = 0.000243; four of them.
        Assert.InRange(rate, Expected - 0.00098, Expected + 0.00098);
    }

    private static bool IsFlagged(RepeatabilityModel model, Random random)
    {
        var (first, second) = Normals(random);
        ExtractResult[] pair = [Extract("1", 0.08 + (Sd * first)), Extract("2", 0.08 + (Sd * second))];
        return ExtractComparison.Of(QuantityCatalogue.Glucose, pair, model, 2, RepeatCost.Expensive).Agreement.Disagrees;
    }

    private static ExtractResult Extract(string name, double content) => new(name, LabResult.Of((decimal)content, null), null, []);

    /// <summary>Two independent normal deviates (Box and Muller 1958).</summary>
    private static (double First, double Second) Normals(Random random)
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
        var (sin, cos) = Math.SinCos(2 * Math.PI * random.NextDouble());
        return (radius * cos, radius * sin);
    }
}
