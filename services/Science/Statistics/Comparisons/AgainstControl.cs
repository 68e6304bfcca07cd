using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>Every treatment against one control or standard variety.</summary>
public static class AgainstControl
{
    /// <summary>SEDs rounded to four digits disturb the correlations by less; the critical value then moves in the fourth decimal at most.</summary>
    private const double CorrelationTolerance = 1e-3;

    /// <summary>
    /// Dunnett's procedure: t = (treatment - control) / SED against the largest of the correlated t values (Dunnett 1955, 1964).
    /// The correlation of two comparisons follows from the three SEDs: ρ = (Sᵢ₀² + Sⱼ₀² - Sᵢⱼ²) / (2 Sᵢ₀ Sⱼ₀).
    /// </summary>
    /// <param name="means">The means, the control among them.</param>
    /// <param name="control">Label of the control.</param>
    /// <param name="alpha">Level for the whole set, strictly between 0 and 1.</param>
    /// <param name="sides">Above or Below claim only that treatments lie above or below the control.</param>
    /// <exception cref="ArgumentException">No such label, or alpha outside its range.</exception>
    /// <exception cref="NotEstimableException">The pairs have different df, or the correlations are not of the form λᵢ λⱼ.</exception>
    public static ComparisonSet Dunnett(ComparedMeans means, string control, double alpha, Sidedness sides)
    {
        ArgumentNullException.ThrowIfNull(means);
        Require.Probability(alpha);
        var zero = means.IndexOf(control);
        var df = means.CommonDf([.. Enumerable.Range(0, means.Count)], "Dunnett's comparison with a control");
        int[] treatments = [.. Enumerable.Range(0, means.Count).Where(index => index != zero)];
        var distribution = new Dunnett(Loadings(means, zero, treatments), df, sides);
        var critical = distribution.UpperQuantile(alpha);
        var name = sides == Sidedness.TwoSided ? "two-sided" : sides == Sidedness.Above ? "one-sided, above" : "one-sided, below";
        return new ComparisonSet(
            $"Dunnett {name} against {control}", alpha, Sample.Text($"All together with {100 * (1 - alpha):0.##} % confidence"), true,
            [.. treatments.Select(One)]);

        PairComparison One(int treatment)
        {
            var difference = means.Difference(treatment, zero);
            var sed = means.Precision(treatment, zero).Sed;
            var t = difference / sed;
            var p = distribution.Upper(sides switch { Sidedness.TwoSided => Math.Abs(t), Sidedness.Above => t, _ => -t });
            return new PairComparison(
                treatment, zero, $"{means.Means[treatment].Label} - {control}", difference, sed, df, t, p,
                sides == Sidedness.Below ? double.NegativeInfinity : difference - (critical * sed),
                sides == Sidedness.Above ? double.PositiveInfinity : difference + (critical * sed));
        }
    }

    /// <summary>λ with ρᵢⱼ = λᵢ λⱼ for all pairs: from any two others, λᵢ² = ρᵢⱼ ρᵢₗ / ρⱼₗ.</summary>
    private static double[] Loadings(ComparedMeans means, int control, int[] treatments)
    {
        var count = treatments.Length;
        var rho = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                rho[i, j] = i == j ? 1 : Correlation(means, control, treatments[i], treatments[j]);
            }
        }

        var loadings = new double[count];
        for (var i = 0; i < count; i++)
        {
            var (j, l) = ((i + 1) % count, (i + 2) % count);
            var square = count switch
            {
                1 => 0,
                2 => rho[i, j],
                _ => rho[j, l] == 0 ? 0 : rho[i, j] * rho[i, l] / rho[j, l],
            };
            loadings[i] = square is >= 0 and < 1 ? Math.Sqrt(square) : throw NotOfProductForm();
        }

        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                if (Math.Abs(rho[i, j] - (loadings[i] * loadings[j])) > CorrelationTolerance)
                {
                    throw NotOfProductForm();
                }
            }
        }

        return loadings;
    }

    private static double Correlation(ComparedMeans means, int control, int i, int j)
    {
        var (first, second, between) = (means.Precision(i, control).Sed, means.Precision(j, control).Sed, means.Precision(i, j).Sed);
        return ((first * first) + (second * second) - (between * between)) / (2 * first * second);
    }

    private static NotEstimableException NotOfProductForm() => new(
        "Dunnett's comparison with a control",
        "the standard errors give correlations that are not products of one number for each treatment; use Holm-adjusted comparisons");
}
