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

    public static int CountRows(ModelData data, IReadOnlyDictionary<string, int> cell)
    {
        var factors = cell.Select(pair => (data.FactorNamed(pair.Key).Codes, pair.Value)).ToArray();
        return Enumerable.Range(0, data.Rows).Count(row => factors.All(factor => factor.Codes[row] == factor.Value));
    }

    /// <summary>Builds the means of a term from an estimator that throws where a combination is not estimable.</summary>
    public static AdjustedMeans Build(ModelData data, Term term, ModelMatrix design, Func<double[], string, LinearEstimate> estimate,
        Func<double[], string, double>? valueOnly = null)
    {
        data.RequireFactorsOnly([term]);
        var cells = Of(data, term);
        var weights = cells.Select(design.CellRow).ToArray();
        var means = cells.Select((cell, index) => Mean(data, term, cell, weights[index], estimate, valueOnly)).ToArray();
        return new AdjustedMeans(term, means, weights, estimate);
    }

    private static AdjustedMean Mean(ModelData data, Term term, IReadOnlyDictionary<string, int> cell, double[] weights,
        Func<double[], string, LinearEstimate> estimate, Func<double[], string, double>? valueOnly)
    {
        var labels = Labels(data, term, cell);
        var count = CountRows(data, cell);
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
