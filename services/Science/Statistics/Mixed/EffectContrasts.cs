using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The interaction contrasts of a term's adjusted means: each level against the last, in every factor at once.</summary>
internal static class EffectContrasts
{
    public static IReadOnlyList<double[]> Of(ModelData data, ModelMatrix design, Term term)
    {
        var factors = term.Variables.Select(data.FactorNamed).ToArray();
        var rows = MeanCells.Of(data, term).ToDictionary(cell => Key(factors.Select(factor => cell[factor.Name])), design.CellRow, StringComparer.Ordinal);
        var chosen = MeanCells.Of(data, term).Where(cell => factors.All(factor => cell[factor.Name] < factor.Levels.Count - 1));
        return [.. chosen.Select(cell => Contrast(factors, [.. factors.Select(factor => cell[factor.Name])], rows))];
    }

    private static double[] Contrast(Factor[] factors, int[] levels, Dictionary<string, double[]> rows)
    {
        var sum = new double[rows.Values.First().Length];
        for (var mask = 0; mask < 1 << factors.Length; mask++)
        {
            var corner = levels.Select((level, index) => (mask & (1 << index)) == 0 ? level : factors[index].Levels.Count - 1);
            VectorKernel.AddScaled(sum, int.IsEvenInteger(int.PopCount(mask)) ? 1 : -1, rows[Key(corner)]);
        }

        return sum;
    }

    private static string Key(IEnumerable<int> levels) => string.Join(",", levels);
}
