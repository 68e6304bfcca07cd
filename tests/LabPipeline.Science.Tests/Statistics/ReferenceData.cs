using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics;

/// <summary>Data sets of the check files, in the shapes the statistics take.</summary>
internal static class ReferenceData
{
    /// <summary>The values of each level of a factor, levels in the order of the file.</summary>
    internal static IReadOnlyList<IReadOnlyList<double>> Groups(string file, string factor, string value) =>
        [.. ReferenceTable.Load(file).Rows.GroupBy(row => row.Text(factor)).Select(level => level.Select(row => row.Number(value)).ToArray())];

    /// <summary>One row for each block, one column for each treatment; both in alphabetical or numerical order.</summary>
    internal static IReadOnlyList<IReadOnlyList<double>> Blocks(string file, string block, string treatment, string value) =>
        [.. ReferenceTable.Load(file).Rows.GroupBy(row => row.Text(block)).OrderBy(row => row.Key, StringComparer.Ordinal)
            .Select(rows => rows.OrderBy(row => row.Text(treatment).PadLeft(8)).Select(row => row.Number(value)).ToArray())];

    /// <summary>Residuals from row and column means of a complete table, row by row.</summary>
    internal static IReadOnlyList<double> AdditiveResiduals(IReadOnlyList<IReadOnlyList<double>> table)
    {
        var grand = table.SelectMany(row => row).Average();
        return [.. table.SelectMany(row => row.Select((value, column) => value - row.Average() - table.Average(other => other[column]) + grand))];
    }

    internal static IReadOnlyList<double> GroupResiduals(IReadOnlyList<IReadOnlyList<double>> groups) =>
        [.. groups.SelectMany(group => group.Select(value => value - group.Average()))];
}
