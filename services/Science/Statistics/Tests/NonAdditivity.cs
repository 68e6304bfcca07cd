using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Tests;

/// <summary>Do block and treatment effects add up, or does a large block enlarge the treatment effects (a sign for a log transform)?</summary>
public static class NonAdditivity
{
    /// <summary>
    /// Tukey's one degree of freedom: SSN = (Σᵢⱼ yᵢⱼ aᵢ bⱼ)² / (Σaᵢ² Σbⱼ²) with block and treatment effects a and b;
    /// F = SSN / [(SSE - SSN) / (df - 1)] on 1 and df - 1, df = (rows - 1)(columns - 1) (Tukey 1949).
    /// </summary>
    /// <param name="table">One row for each block, one column for each treatment, complete; at least 2 by 3 or 3 by 2.</param>
    /// <exception cref="ArgumentException">Rows of unequal length, too small a table, or a value that is not finite.</exception>
    /// <exception cref="NotEstimableException">All block means or all treatment means are equal, or nothing is left as error.</exception>
    public static TestOutcome Tukey(IReadOnlyList<IReadOnlyList<double>> table)
    {
        var df = CheckedDf(table);
        var grand = Moments.Of([.. table.SelectMany(row => row)]).Mean;
        var rows = table.Select(row => Effect(row, grand)).ToArray();
        var columns = Enumerable.Range(0, table[0].Count).Select(column => Effect([.. table.Select(row => row[column])], grand)).ToArray();
        var (error, cross) = (0.0, 0.0);
        for (var row = 0; row < rows.Length; row++)
        {
            for (var column = 0; column < columns.Length; column++)
            {
                var residual = table[row][column] - grand - rows[row] - columns[column];
                error += residual * residual;
                cross += residual * rows[row] * columns[column];
            }
        }

        var scale = rows.Sum(effect => effect * effect) * columns.Sum(effect => effect * effect);
        if (!(scale > 0))
        {
            throw new NotEstimableException("Tukey's non-additivity F", "all block means or all treatment means are equal");
        }

        var extra = cross * cross / scale;
        var rest = error - extra;
        if (!(rest > 1e-12 * error))
        {
            throw new NotEstimableException("Tukey's non-additivity F", "nothing is left as error after the one degree of freedom is taken out");
        }

        var statistic = extra / (rest / (df - 1));
        return new TestOutcome("Tukey one-df non-additivity", statistic, 1, df - 1, FDistribution.Upper(statistic, 1, df - 1));
    }

    private static int CheckedDf(IReadOnlyList<IReadOnlyList<double>> table)
    {
        Sample.CheckGroups(table, 2);
        var (rows, columns) = (table.Count, table[0].Count);
        for (var row = 1; row < rows; row++)
        {
            if (table[row].Count != columns)
            {
                throw new ArgumentException(Sample.Text($"Row {row + 1} has {table[row].Count} values, row 1 has {columns}; the table must be complete."), nameof(table));
            }
        }

        var df = (rows - 1) * (columns - 1);
        return df >= 2
            ? df
            : throw new ArgumentException(Sample.Text($"The table is {rows} by {columns}; at least 2 by 3 is needed to leave an error term."), nameof(table));
    }

    /// <summary>Snapped to 0 when it is rounding error, so that equal means are seen as equal.</summary>
    private static double Effect(IReadOnlyList<double> values, double grand)
    {
        var effect = Moments.Of(values).Mean - grand;
        return Math.Abs(effect) <= 1e-14 * Math.Abs(grand) ? 0 : effect;
    }
}
