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

        var order = Enumerable.Range(0, pValues.Count).OrderBy(index => pValues[index]).ToArray();
        var adjusted = new double[pValues.Count];
        switch (adjustment)
        {
            case PValueAdjustment.None:
                return [.. pValues];
            case PValueAdjustment.Bonferroni:
                return [.. pValues.Select(p => Math.Min(1, p * pValues.Count))];
            case PValueAdjustment.Holm:
                Holm();
                return adjusted;
            case PValueAdjustment.BenjaminiHochberg:
                BenjaminiHochberg();
                return adjusted;
            default:
                throw new ArgumentOutOfRangeException(nameof(adjustment), $"There is no adjustment {adjustment}.");
        }

        void Holm()
        {
            var largest = 0.0;
            for (var place = 0; place < order.Length; place++)
            {
                largest = Math.Max(largest, (order.Length - place) * pValues[order[place]]);
                adjusted[order[place]] = Math.Min(1, largest);
            }
        }

        void BenjaminiHochberg()
        {
            var smallest = 1.0;
            for (var place = order.Length - 1; place >= 0; place--)
            {
                smallest = Math.Min(smallest, pValues[order[place]] * order.Length / (place + 1));
                adjusted[order[place]] = smallest;
            }
        }
    }
}
