using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.ControlCharts;

/// <summary>The run rules in use. More rules mean more false alarms: choose three or four and state them.</summary>
/// <remarks>
/// Sources: Western Electric 1956, Statistical Quality Control Handbook; Nelson 1984, Journal of Quality Technology 16:237-239; Westgard, Barry, Hunt,
/// Groth 1981, Clinical Chemistry 27:493-501; ISO 7870-2:2013 (definitions from memory but those of 1981). Rates are for normal, independent points.
/// </remarks>
public static class RunRules
{
    public static readonly RunRule BeyondThree = Make(
        "beyond_3s", "1 point beyond 3 s", "Western Electric 1; Nelson 1; Westgard 1-3s; ISO 7870-2 a", 1, TwoSided(3), z => Math.Abs(z[^1]) > 3m);

    public static readonly RunRule BeyondTwo = Make(
        "beyond_2s_warning", "1 point beyond 2 s: a warning to look at the other rules", "Westgard 1-2s", 1, TwoSided(2), z => Math.Abs(z[^1]) > 2m);

    public static readonly RunRule TwoOfThreeBeyondTwo = Make(
        "two_of_three_beyond_2s", "2 of 3 points beyond 2 s on one side, the newest among them", "Western Electric 2; Nelson 5",
        2, 3, AtLeast(2, 3, 2), z => CountBeyond(z, 2m) >= 2);

    public static readonly RunRule FourOfFiveBeyondOne = Make(
        "four_of_five_beyond_1s", "4 of 5 points beyond 1 s on one side, the newest among them", "Western Electric 3; Nelson 6",
        4, 5, AtLeast(4, 5, 1), z => CountBeyond(z, 1m) >= 4);

    public static readonly RunRule TwoBeyondTwo = Make(
        "two_beyond_2s", "2 points in a row beyond 2 s on one side", "Westgard 2-2s", 2, 2 * Math.Pow(Normal.Upper(2), 2), z => CountBeyond(z, 2m) == 2);

    public static readonly RunRule OppositeBeyondTwo = Make(
        "opposite_beyond_2s", "2 points in a row beyond 2 s on opposite sides, a range above 4 s", "Westgard R-4s",
        2, 2 * Math.Pow(Normal.Upper(2), 2), z => Math.Abs(z[0]) > 2m && Math.Abs(z[1]) > 2m && Math.Sign(z[0]) != Math.Sign(z[1]));

    public static readonly RunRule FourBeyondOne = Make(
        "four_beyond_1s", "4 points in a row beyond 1 s on one side", "Westgard 4-1s", 4, 2 * Math.Pow(Normal.Upper(1), 4), z => CountBeyond(z, 1m) == 4);

    public static readonly RunRule SevenOneSide = OneSide("seven_one_side", 7, "ISO 7870-2 b");

    public static readonly RunRule EightOneSide = OneSide("eight_one_side", 8, "Western Electric 4");

    public static readonly RunRule NineOneSide = OneSide("nine_one_side", 9, "Nelson 2");

    public static readonly RunRule TenOneSide = OneSide("ten_one_side", 10, "Westgard 10x");

    public static readonly RunRule SixSteady = Steady("six_steady", 6, "Nelson 3");

    public static readonly RunRule SevenSteady = Steady("seven_steady", 7, "ISO 7870-2 c");

    public static readonly RunRule FourteenAlternating = Make(
        "fourteen_alternating", "14 points in a row alternately up and down", "Nelson 4", 14, AlternatingRate(14), IsAlternating);

    public static readonly RunRule FifteenWithinOne = Make(
        "fifteen_within_1s", "15 points in a row within 1 s: limits too wide, or strata mixed in each point", "Nelson 7",
        15, Math.Pow(1 - TwoSided(1), 15), z => z.All(point => Math.Abs(point) < 1m));

    public static readonly RunRule EightBeyondOneEitherSide = Make(
        "eight_beyond_1s_either_side", "8 points in a row beyond 1 s, either side: two populations", "Nelson 8",
        8, Math.Pow(TwoSided(1), 8), z => z.All(point => Math.Abs(point) > 1m));

    /// <summary>All rules.</summary>
    public static IReadOnlyList<RunRule> All { get; } =
    [
        BeyondThree, BeyondTwo, TwoOfThreeBeyondTwo, FourOfFiveBeyondOne, TwoBeyondTwo, OppositeBeyondTwo, FourBeyondOne, SevenOneSide,
        EightOneSide, NineOneSide, TenOneSide, SixSteady, SevenSteady, FourteenAlternating, FifteenWithinOne, EightBeyondOneEitherSide,
    ];

    /// <summary>The rule stored as <paramref name="name"/>.</summary>
    /// <exception cref="ArgumentException">There is none; the message lists the names.</exception>
    public static RunRule Named(string name) => All.FirstOrDefault(rule => string.Equals(rule.Name, name, StringComparison.Ordinal))
        ?? throw new ArgumentException($"Found the run rule '{name}', expected one of {string.Join(", ", All)}.", nameof(name));

    /// <summary>Every point at which one of the rules fires, in time order.</summary>
    /// <param name="z">Points in time order, in standard errors from the centre line: <see cref="ControlLimits.Z"/>.</param>
    /// <param name="rules">The rules the laboratory chose.</param>
    public static IReadOnlyList<RunRuleSignal> Evaluate(IReadOnlyList<decimal> z, IReadOnlyCollection<RunRule> rules)
    {
        ArgumentNullException.ThrowIfNull(z);
        ArgumentNullException.ThrowIfNull(rules);
        return [.. from index in Enumerable.Range(0, z.Count)
                   from rule in rules
                   where rule.FiresAt(z, index)
                   select new RunRuleSignal(rule, index)];
    }

    private static RunRule Make(string name, string definition, string source, int points, double rate, Func<IReadOnlyList<decimal>, bool> fires) =>
        new(name, definition, source, points, points, rate, fires);

    private static RunRule Make(string name, string definition, string source, int fewest, int points, double rate, Func<IReadOnlyList<decimal>, bool> fires) =>
        new(name, definition, source, fewest, points, rate, fires);

    private static RunRule OneSide(string name, int points, string source) => Make(
        name, $"{points} points in a row on one side of the centre line", source, points, 2 * Math.Pow(0.5, points), z => CountBeyond(z, 0m) == points);

    private static RunRule Steady(string name, int points, string source) => Make(
        name, $"{points} points in a row steadily rising or falling", source, points, 2 / Factorial(points), z =>
        {
            var direction = Math.Sign(z[1] - z[0]);
            return direction != 0 && Steps(z).All(step => step == direction);
        });

    private static bool IsAlternating(IReadOnlyList<decimal> z)
    {
        var steps = Steps(z);
        return steps[0] != 0 && steps.Zip(steps.Skip(1)).All(pair => pair.First == -pair.Second);
    }

    private static List<int> Steps(IReadOnlyList<decimal> z) => [.. z.Zip(z.Skip(1), (first, second) => Math.Sign(second - first))];

    // Points beyond the line on the side of the newest point, none when the newest is not beyond it itself.
    private static int CountBeyond(IReadOnlyList<decimal> z, decimal line)
    {
        var side = Math.Sign(z[^1]);
        return z[^1] * side > line ? z.Count(point => point * side > line) : 0;
    }

    private static double TwoSided(double line) => 2 * Normal.Upper(line);

    private static double AtLeast(int fewest, int points, double line)
    {
        var p = Normal.Upper(line);
        return 2 * Enumerable.Range(fewest, points - fewest + 1)
            .Sum(count => Factorial(points) / Factorial(count) / Factorial(points - count) * Math.Pow(p, count) * Math.Pow(1 - p, points - count));
    }

    // Alternating permutations are counted by Euler's zigzag numbers, built with the Seidel triangle.
    private static double AlternatingRate(int points)
    {
        double[] row = [1];
        for (var size = 1; size <= points; size++)
        {
            var next = new double[size + 1];
            for (var index = 1; index <= size; index++)
            {
                next[index] = next[index - 1] + row[size - index];
            }

            row = next;
        }

        return 2 * row[points] / Factorial(points);
    }

    private static double Factorial(int number) => Enumerable.Range(1, number).Aggregate(1.0, (product, factor) => product * factor);
}
