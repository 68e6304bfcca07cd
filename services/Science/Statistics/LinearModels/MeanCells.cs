using LabPipeline.Science.Statistics.Comparisons;

namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>The cells of a term: labels, weight vectors over the model's columns, and rows observed.</summary>
internal static class MeanCells
{
    /// <summary>All combinations of the term's levels, the last factor changing fastest.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, int>> Of(ModelData data, Term term)
    {
        var cells = new List<Dictionary<string, int>> { new(StringComparer.Ordinal) };
        foreach (var factor in term.Variables.Select(data.FactorNamed))
        {
            cells = [.. cells.SelectMany(_ => Enumerable.Range(0, factor.Levels.Count),
                (cell, level) => new Dictionary<string, int>(cell, StringComparer.Ordinal) { [factor.Name] = level })];
        }

        return cells;
    }

    public static IReadOnlyList<string> Labels(ModelData data, Term term, IReadOnlyDictionary<string, int> cell) =>
        [.. term.Variables.Select(name => data.FactorNamed(name).Levels[cell[name]])];

    /// <summary>Rows observed of each cell, in the order of <see cref="Of"/>.</summary>
    private static int[] CountRows(ModelData data, Term term, int cells)
    {
        var counts = new int[cells];
        var factors = term.Variables.Select(data.FactorNamed).ToArray();
        for (var row = 0; row < data.Rows; row++)
        {
            counts[factors.Aggregate(0, (place, factor) => (place * factor.Levels.Count) + factor.Codes[row])]++;
        }

        return counts;
    }

    /// <summary>Builds the means of a term from an estimator that throws where a combination is not estimable.</summary>
    public static AdjustedMeans Build(ModelData data, Term term, ModelMatrix design, Func<double[], string, LinearEstimate> estimate,
        Func<double[], string, double>? valueOnly = null, Func<IReadOnlyList<double[]>, Func<int, int, PairPrecision>>? pairs = null)
    {
        data.RequireFactorsOnly([term]);
        var cells = Of(data, term);
        var weights = cells.Select(design.CellRow).ToArray();
        var counts = CountRows(data, term, cells.Count);
        var means = cells.Select((cell, index) => Mean(Labels(data, term, cell), counts[index], weights[index], estimate, valueOnly)).ToArray();
        return new AdjustedMeans(term, means, weights, estimate, pairs);
    }

    private static AdjustedMean Mean(IReadOnlyList<string> labels, int count, double[] weights,
        Func<double[], string, LinearEstimate> estimate, Func<double[], string, double>? valueOnly)
    {
        try
        {
            var found = valueOnly is null ? estimate(weights, string.Join(":", labels)) : null;
            return new AdjustedMean(labels, count, found?.Estimate ?? valueOnly!(weights, string.Join(":", labels)), found, null);
        }
        catch (NotEstimableException reason)
        {
            return new AdjustedMean(labels, count, null, null, reason.Why);
        }
    }
}
