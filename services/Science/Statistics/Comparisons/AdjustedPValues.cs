namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>p values adjusted for the number of tests, in the order given.</summary>
public static class AdjustedPValues
{
    /// <param name="pValues">At least one, each from 0 to 1.</param>
    /// <param name="adjustment">
    /// With p₍₁₎ ≤ ... ≤ p₍ₘ₎: Bonferroni min(1, m p); Holm max over j ≤ i of min(1, (m - j + 1) p₍ⱼ₎);
    /// Benjamini-Hochberg min over j ≥ i of min(1, m p₍ⱼ₎ / j).
    /// </param>
    /// <exception cref="ArgumentException">No p values, or one that is NaN or outside 0 to 1.</exception>
    public static IReadOnlyList<double> Of(IReadOnlyList<double> pValues, PValueAdjustment adjustment)
    {
        Sample.Check(pValues, 1, "The list of p values");
        var wrong = pValues.FirstOrDefault(p => p is < 0 or > 1);
        if (wrong != 0)
        {
            throw new ArgumentException(Sample.Text($"A p value is {wrong}; 0 to 1 is expected."), nameof(pValues));
        }

        return adjustment switch
        {
            PValueAdjustment.None => [.. pValues],
            PValueAdjustment.Bonferroni => [.. pValues.Select(p => Math.Min(1, p * pValues.Count))],
            PValueAdjustment.Holm => Holm(pValues),
            PValueAdjustment.BenjaminiHochberg => BenjaminiHochberg(pValues),
            _ => throw new ArgumentOutOfRangeException(nameof(adjustment), $"There is no adjustment {adjustment}."),
        };
    }

    private static double[] Holm(IReadOnlyList<double> pValues)
    {
        var (order, adjusted, largest) = (Order(pValues), new double[pValues.Count], 0.0);
        for (var place = 0; place < order.Length; place++)
        {
            largest = Math.Max(largest, (order.Length - place) * pValues[order[place]]);
            adjusted[order[place]] = Math.Min(1, largest);
        }

        return adjusted;
    }

    private static double[] BenjaminiHochberg(IReadOnlyList<double> pValues)
    {
        var (order, adjusted, smallest) = (Order(pValues), new double[pValues.Count], 1.0);
        for (var place = order.Length - 1; place >= 0; place--)
        {
            smallest = Math.Min(smallest, pValues[order[place]] * order.Length / (place + 1));
            adjusted[order[place]] = smallest;
        }

        return adjusted;
    }

    private static int[] Order(IReadOnlyList<double> pValues) => [.. Enumerable.Range(0, pValues.Count).OrderBy(index => pValues[index])];
}
