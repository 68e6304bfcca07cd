using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>Contrasts named before the data were seen.</summary>
public static class PlannedContrasts
{
    /// <summary>
    /// Estimate, t test and interval of one contrast. Because the coefficients add to 0 its variance follows from the SEDs
    /// alone, correlated means included: Var = -Σ over i &lt; j of cᵢ cⱼ SEDᵢⱼ².
    /// </summary>
    /// <param name="means">The means.</param>
    /// <param name="contrast">Coefficients in the order of the means.</param>
    /// <param name="alpha">1 - confidence of the interval, strictly between 0 and 1.</param>
    /// <param name="df">Degrees of freedom, needed where the pairs concerned have different ones.</param>
    /// <exception cref="ArgumentException">Coefficients of the wrong number, not adding to 0, or all 0; alpha or df outside its range.</exception>
    /// <exception cref="NotEstimableException">The pairs have different df and none is given, or the SEDs contradict each other.</exception>
    public static ContrastEstimate Estimate(ComparedMeans means, Contrast contrast, double alpha, double? df = null)
    {
        ArgumentNullException.ThrowIfNull(means);
        ArgumentNullException.ThrowIfNull(contrast);
        Require.Probability(alpha);
        var c = contrast.Coefficients;
        Check(means, contrast);
        int[] used = [.. Enumerable.Range(0, c.Count).Where(index => c[index] != 0)];
        var degrees = df ?? means.CommonDf(used, $"The contrast '{contrast.Label}'");
        var (estimate, variance) = (new CompensatedSum(), new CompensatedSum());
        foreach (var i in used)
        {
            // Differences from the first mean: the constant part of all means cancels before it can cost digits.
            estimate.Add(c[i] * means.Difference(i, used[0]));
            foreach (var j in used.Where(j => j > i))
            {
                var sed = means.Precision(i, j).Sed;
                variance.Add(-c[i] * c[j] * sed * sed);
            }
        }

        if (!(variance.Value > 0))
        {
            throw new NotEstimableException($"The contrast '{contrast.Label}'", "the standard errors of the differences contradict each other (negative variance)");
        }

        var error = Math.Sqrt(variance.Value);
        var t = estimate.Value / error;
        var half = StudentT.UpperQuantile(alpha / 2, degrees) * error;
        return new ContrastEstimate(
            contrast.Label, estimate.Value, error, degrees, t, StudentT.TwoSided(t, degrees), estimate.Value - half, estimate.Value + half);
    }

    private static void Check(ComparedMeans means, Contrast contrast)
    {
        var c = contrast.Coefficients;
        Sample.Check(c, 2, $"The contrast '{contrast.Label}'");
        if (c.Count != means.Count)
        {
            throw new ArgumentException(Sample.Text($"The contrast '{contrast.Label}' has {c.Count} coefficients for {means.Count} means; one for each is expected."), nameof(contrast));
        }

        var size = c.Sum(Math.Abs);
        if (size == 0 || Math.Abs(c.Sum()) > 1e-9 * size)
        {
            throw new ArgumentException(Sample.Text($"The coefficients of '{contrast.Label}' add to {c.Sum():G6}; they must add to 0 and not all be 0."), nameof(contrast));
        }
    }
}
