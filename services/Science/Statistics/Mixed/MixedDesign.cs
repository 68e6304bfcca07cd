using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The rows of a mixed model arranged by plot, with the columns of random units (Z) before those of fixed effects (X).</summary>
internal sealed class MixedDesign
{
    private readonly int[][] _unitsOfRow;

    public MixedDesign(ModelData data, IReadOnlyList<Term> fixedTerms, IReadOnlyList<Term> random, RepeatedPulls? repeated)
    {
        Data = data;
        Fixed = ModelMatrix.Build(data, fixedTerms, Coding.Reference);
        Search = new SearchColumns(Fixed);
        Random = random;
        Times = new PullTimes(repeated?.Times ?? [0.0]);
        var groups = random.Select(data.GroupsOf).ToList();
        OwnerOfColumn = [.. groups.SelectMany((group, index) => Enumerable.Repeat(index, group.Count))];
        _unitsOfRow = [.. Enumerable.Range(0, data.Rows).Select(row => groups.Select((group, index) => groups.Take(index).Sum(earlier => earlier.Count) + group.Groups[row]).ToArray())];
        var plots = repeated is null ? [.. Enumerable.Range(0, data.Rows)] : data.GroupsOf(repeated.Plot).Groups;
        Require(repeated, plots, groups);
        Subjects = Arrange(plots, repeated?.Times);
        Blocks = EffectBlock.Of(Subjects, FixedColumns);
        Ordinary = Search.Ordinary(data.Response);
    }

    public ModelData Data { get; }

    public ModelMatrix Fixed { get; }

    /// <summary>The columns of fixed effects behind <see cref="Subjects"/>.</summary>
    public SearchColumns Search { get; }

    public IReadOnlyList<Term> Random { get; }

    public PullTimes Times { get; }

    /// <summary>The random term behind each column of Z.</summary>
    public int[] OwnerOfColumn { get; }

    public IReadOnlyList<Subject> Subjects { get; }

    public IReadOnlyList<EffectBlock> Blocks { get; }

    /// <summary>Least squares coefficients and residuals: the search works on residuals, so a large mean costs no digits.</summary>
    public (double[] Coefficients, double[] Residuals) Ordinary { get; }

    public int RandomColumns => OwnerOfColumn.Length;

    public int FixedColumns => Search.Qr.Rank;

    private void Require(RepeatedPulls? repeated, int[] plots, List<(int[] Groups, int Count)> units)
    {
        foreach (var (term, (groups, count)) in Random.Zip(units))
        {
            if (count < 2)
            {
                throw new NotEstimableException($"The variance of {term}", "there is only one such unit");
            }

            if (plots.Zip(groups).Distinct().Count() == count)
            {
                throw new NotEstimableException($"The variance of {term}", "its units are no larger than the plots or rows, whose variance the model already holds");
            }
        }

        if (repeated is not null && repeated.Times.Count != Data.Rows)
        {
            throw new ArgumentException($"Found {repeated.Times.Count} times for {Data.Rows} rows; expected one a row.", nameof(repeated));
        }

        if (repeated is not null && (Times.Count < 2 || !repeated.Times.All(double.IsFinite)))
        {
            throw new ArgumentException($"Found {Times.Count} distinct time(s); expected at least 2, all finite.", nameof(repeated));
        }

        if (Data.Rows <= FixedColumns)
        {
            throw new NotEstimableException("The mixed model", $"{Data.Rows} rows leave no residual degrees of freedom after {FixedColumns} fixed effects");
        }
    }

    private List<Subject> Arrange(int[] plots, IReadOnlyList<double>? times)
    {
        var subjects = new List<Subject>();
        var patterns = new Dictionary<string, int>(StringComparer.Ordinal);
        var kinds = new List<(int Pattern, Matrix Values)>();
        foreach (var plot in Enumerable.Range(0, Data.Rows).GroupBy(row => plots[row]))
        {
            var rows = plot.OrderBy(row => times?[row] ?? 0).ToArray();
            int[] positions = [.. rows.Select(row => times is null ? 0 : Times.PositionOf(times[row]))];
            if (positions.Distinct().Count() < positions.Length)
            {
                throw new ArgumentException($"Row {rows[0] + 1} belongs to a plot with two values at one pull; expected plot means, one a plot and pull.", nameof(times));
            }

            var key = string.Join(",", positions);
            patterns.TryAdd(key, patterns.Count);
            var (units, effects, values) = Touched(rows);
            var kind = kinds.FindIndex(other => other.Pattern == patterns[key] && other.Values.SameAs(values));
            if (kind < 0)
            {
                kind = kinds.Count;
                kinds.Add((patterns[key], values));
            }

            subjects.Add(new Subject(rows, positions, patterns[key], kind, units, effects, values));
        }

        return subjects;
    }

    private (int[] Units, int[] Effects, Matrix Values) Touched(int[] rows)
    {
        var entries = rows.Select(row => Search.Entries(row).ToList()).ToList();
        int[] units = [.. rows.SelectMany(row => _unitsOfRow[row]).Distinct().Order()];
        int[] effects = [.. entries.SelectMany(row => row).Select(entry => entry.Column).Distinct().Order()];
        var values = new Matrix(rows.Length, units.Length + effects.Length);
        for (var row = 0; row < rows.Length; row++)
        {
            foreach (var unit in _unitsOfRow[rows[row]])
            {
                values[row, Array.BinarySearch(units, unit)] = 1;
            }

            foreach (var (column, value) in entries[row])
            {
                values[row, units.Length + Array.BinarySearch(effects, column)] = value;
            }
        }

        return (units, effects, values);
    }
}
