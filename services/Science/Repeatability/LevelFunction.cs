using LabPipeline.Science.Statistics;
using LabPipeline.Science.Units;

namespace LabPipeline.Science.Repeatability;

/// <summary>Repeatability standard deviation as a function of the level: s = a + b m.</summary>
/// <remarks>
/// Weighted least squares with weights df/ŝ², refitted with the weights of the last fit until it settles (the standard stops after two refits, which
/// differs in the third digit). A line that starts below zero is replaced by s = b m, one that falls by the pooled constant.
/// Source: ISO 5725-2:1994, 7.5 (from memory).
/// </remarks>
public sealed class LevelFunction
{
    private const int MostRefits = 100;

    private LevelFunction(LevelForm form, double intercept, double slope, IReadOnlyCollection<LevelPrecision> levels)
    {
        Form = form;
        Intercept = intercept;
        Slope = slope;
        DegreesOfFreedom = levels.Sum(level => level.DegreesOfFreedom);
        LowestLevel = levels.Min(level => level.Level);
        HighestLevel = levels.Max(level => level.Level);
    }

    /// <summary>Which relation holds.</summary>
    public LevelForm Form { get; }

    /// <summary>a, in the unit of the results.</summary>
    public double Intercept { get; }

    /// <summary>b, dimensionless.</summary>
    public double Slope { get; }

    /// <summary>Degrees of freedom of all levels together.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Lowest level fitted; below it the relation is extrapolated.</summary>
    public double LowestLevel { get; }

    /// <summary>Highest level fitted; above it the relation is extrapolated.</summary>
    public double HighestLevel { get; }

    /// <summary>Fits the relation to two or more levels.</summary>
    /// <param name="levels">Levels and their s_r, in one unit.</param>
    /// <param name="refits">How many refits; ISO 5725-2 makes two.</param>
    /// <exception cref="ArgumentException">Fewer than two different levels.</exception>
    public static LevelFunction Fit(IReadOnlyCollection<LevelPrecision> levels, int refits = MostRefits)
    {
        ArgumentNullException.ThrowIfNull(levels);
        if (levels.Select(level => level.Level).Distinct().Count() < 2)
        {
            throw new ArgumentException($"Found {levels.Count} levels, expected two or more different ones.", nameof(levels));
        }

        var line = WeightedLine(levels, level => level.StandardDeviation);
        for (var refit = 0; refit < refits; refit++)
        {
            if (Straighten(line, levels) is { } other)
            {
                return other;
            }

            var last = line;
            line = WeightedLine(levels, level => last.Intercept + (last.Slope * level.Level));
        }

        return Straighten(line, levels) ?? new(LevelForm.Linear, line.Intercept, line.Slope, levels);
    }

    /// <summary>Fits the relation to duplicate pairs, put into groups of equal count by their means.</summary>
    /// <param name="pairs">Pairs with means above zero; ten a group are wanted.</param>
    /// <param name="groups">Number of groups, 2 or more.</param>
    /// <exception cref="ArgumentException">Fewer than two pairs a group, or a mean that is not above zero.</exception>
    /// <exception cref="NotEstimableException">All pairs of a group agree exactly: results are rounded too coarsely.</exception>
    public static LevelFunction FromPairs(IReadOnlyCollection<DuplicatePair> pairs, int groups)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        if (pairs.Count < 2 * groups)
        {
            throw new ArgumentException($"Found {pairs.Count} pairs for {groups} groups, expected at least two a group.", nameof(pairs));
        }

        var sorted = pairs.OrderBy(pair => pair.Mean).ToList();
        return Fit([.. Enumerable.Range(0, groups).Select(group =>
            Pool(sorted[(group * sorted.Count / groups)..((group + 1) * sorted.Count / groups)]))]);
    }

    /// <summary>s_r at a level, in the unit of the results.</summary>
    /// <param name="level">Level, zero or more.</param>
    /// <returns>Not estimable at level 0 of a proportional relation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">NaN, infinite or negative.</exception>
    public Estimable<double> StandardDeviationAt(double level)
    {
        var deviation = Intercept + (Slope * Require.NotNegative(level, nameof(level)));
        return deviation > 0 ? deviation : Estimable<double>.Not("a proportional relation has no spread at level zero");
    }

    private static LevelPrecision Pool(List<DuplicatePair> pairs)
    {
        var estimate = RepeatabilityEstimate.FromPairs(pairs);
        return estimate.StandardDeviation > 0m
            ? new((double)pairs.Average(pair => pair.Mean), (double)estimate.StandardDeviation, estimate.DegreesOfFreedom)
            : throw new NotEstimableException("Repeatability by level", $"all {pairs.Count} pairs of a group agree exactly");
    }

    private static LevelFunction? Straighten((double Intercept, double Slope) line, IReadOnlyCollection<LevelPrecision> levels)
    {
        var freedom = levels.Sum(level => level.DegreesOfFreedom);
        if (line.Slope < 0)
        {
            var variance = levels.Sum(level => level.DegreesOfFreedom * level.StandardDeviation * level.StandardDeviation) / freedom;
            return new(LevelForm.Constant, Math.Sqrt(variance), 0, levels);
        }

        return line.Intercept < 0
            ? new(LevelForm.Proportional, 0, levels.Sum(level => level.DegreesOfFreedom * level.StandardDeviation / level.Level) / freedom, levels)
            : null;
    }

    private static (double Intercept, double Slope) WeightedLine(IReadOnlyCollection<LevelPrecision> levels, Func<LevelPrecision, double> expected)
    {
        var weighted = levels.Select(level => (W: level.DegreesOfFreedom / (expected(level) * expected(level)), M: level.Level, S: level.StandardDeviation)).ToList();
        var total = weighted.Sum(point => point.W);
        var (centre, height) = (weighted.Sum(point => point.W * point.M) / total, weighted.Sum(point => point.W * point.S) / total);
        var slope = weighted.Sum(point => point.W * (point.M - centre) * (point.S - height)) / weighted.Sum(point => point.W * (point.M - centre) * (point.M - centre));
        return (height - (slope * centre), slope);
    }
}
