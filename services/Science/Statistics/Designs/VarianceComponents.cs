using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>Variance components of balanced nested units by equating mean squares with their expectations.</summary>
public static class VarianceComponents
{
    /// <summary>
    /// E[MS of a stratum] = sum over units nested in it, itself included, of (rows in one unit) * variance, plus the within variance.
    /// Solved from the smallest unit up; for unbalanced data use the REML components of a mixed model.
    /// </summary>
    /// <param name="data">The data the strata came from.</param>
    /// <param name="fit">The stratified fit.</param>
    /// <param name="units">The units of that fit, largest first, each nested in the one before.</param>
    /// <exception cref="NotEstimableException">Units of unequal size, units not nested, or a stratum without residual.</exception>
    public static IReadOnlyList<VarianceComponent> FromMeanSquares(ModelData data, StratifiedFit fit, IReadOnlyList<Term> units)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(units);
        var components = new List<VarianceComponent>();
        var (below, hasWithin) = (0.0, fit.Strata.Any(stratum => stratum.Name == Stratum.Within));
        if (hasWithin)
        {
            below = MeanSquare(fit, Stratum.Within, out var df);
            components.Add(new VarianceComponent(Stratum.Within, below, df));
        }

        for (var unit = units.Count - 1; unit >= 0; unit--)
        {
            RequireNested(data, units, unit);
            var meanSquare = MeanSquare(fit, units[unit].Name, out var df);
            components.Insert(0, new VarianceComponent(units[unit].Name, (meanSquare - below) / SizeOf(data, units[unit]), df));
            below = meanSquare;
        }

        return components;
    }

    private static double MeanSquare(StratifiedFit fit, string name, out int df)
    {
        var stratum = fit.Strata.SingleOrDefault(entry => entry.Name == name);
        df = stratum?.ResidualDf ?? 0;
        return stratum?.ResidualMeanSquare
            ?? throw new NotEstimableException($"The variance component of {name}", "its stratum has no residual degrees of freedom");
    }

    private static int SizeOf(ModelData data, Term unit)
    {
        var sizes = data.GroupsOf(unit).Groups.CountBy(group => group).Select(pair => pair.Value).Distinct().ToArray();
        return sizes.Length == 1
            ? sizes[0]
            : throw new NotEstimableException($"The variance component of {unit} by moments", $"its units have {sizes.Min()} to {sizes.Max()} rows; use REML");
    }

    private static void RequireNested(ModelData data, IReadOnlyList<Term> units, int unit)
    {
        if (unit == 0)
        {
            return;
        }

        var inner = data.GroupsOf(units[unit]).Groups;
        var outer = data.GroupsOf(units[unit - 1]).Groups;
        if (inner.Zip(outer).Distinct().Count() != inner.Distinct().Count())
        {
            throw new NotEstimableException($"The variance component of {units[unit]} by moments", $"its units are not nested in {units[unit - 1]}; use REML");
        }
    }
}
