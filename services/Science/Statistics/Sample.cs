using System.Globalization;

namespace LabPipeline.Science.Statistics;

/// <summary>The checks every statistic makes of its data; a message gives the place, what was found and what was expected.</summary>
internal static class Sample
{
    internal static void Check(IReadOnlyList<double> values, int atLeast, string what)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count < atLeast)
        {
            throw new ArgumentException(Text($"{what} has {values.Count} values; at least {atLeast} are needed."));
        }

        for (var index = 0; index < values.Count; index++)
        {
            if (!double.IsFinite(values[index]))
            {
                throw new ArgumentException(Text($"{what}: value {index + 1} of {values.Count} is {values[index]}; a finite number is expected. Leave missing values out before."));
            }
        }
    }

    internal static void CheckGroups(IReadOnlyList<IReadOnlyList<double>> groups, int atLeastEach)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count < 2)
        {
            throw new ArgumentException(Text($"Found {groups.Count} groups; at least 2 are needed to compare."));
        }

        for (var index = 0; index < groups.Count; index++)
        {
            Check(groups[index], atLeastEach, Text($"Group {index + 1} of {groups.Count}"));
        }
    }

    internal static void CheckPair(IReadOnlyList<double> x, IReadOnlyList<double> y, int atLeast)
    {
        Check(x, atLeast, "x");
        Check(y, atLeast, "y");
        if (x.Count != y.Count)
        {
            throw new ArgumentException(Text($"x has {x.Count} values and y has {y.Count}; pairs need equal counts."));
        }
    }

    internal static bool AllEqual(IReadOnlyList<double> values) => values.All(value => value == values[0]);

    internal static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
