using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The rows of a mixed model arranged by plot, with the columns of random units (Z) before those of fixed effects (X).</summary>
internal sealed class MixedDesign
{
    public MixedDesign(ModelData data, IReadOnlyList<Term> fixedTerms, IReadOnlyList<Term> random, RepeatedPulls? repeated)
    {
        Data = data;
        Fixed = ModelMatrix.Build(data, fixedTerms, Coding.Reference);
        Qr = HouseholderQr.Factor(Fixed.Columns);
        Search = new SearchColumns(Fixed, Qr);
        Random = random;
        Structure = repeated?.Structure ?? CovarianceStructure.Independent;
        Times = new PullTimes(repeated?.Times ?? [0.0]);
        Groups = [.. random.Select(term => data.GroupsOf(term).Groups)];
        OwnerOfColumn = [.. random.SelectMany((term, index) => Enumerable.Repeat(index, data.GroupsOf(term).Count))];
        var plots = repeated is null ? [.. Enumerable.Range(0, data.Rows)] : data.GroupsOf(repeated.Plot).Groups;
        Require(repeated, plots);
        Subjects = Arrange(plots, repeated?.Times);
        Ordinary = Residuals();
    }

    public ModelData Data { get; }

    public ModelMatrix Fixed { get; }

    /// <summary>Keeps the columns of X that can be estimated.</summary>
    public HouseholderQr Qr { get; }

    /// <summary>The columns of fixed effects behind <see cref="Subjects"/>.</summary>
    public SearchColumns Search { get; }

    public IReadOnlyList<Term> Random { get; }

    public CovarianceStructure Structure { get; }

    public PullTimes Times { get; }

    /// <summary>For each random term, the unit of every row.</summary>
    public int[][] Groups { get; }

    /// <summary>The random term behind each column of Z.</summary>
    public int[] OwnerOfColumn { get; }

    public IReadOnlyList<Subject> Subjects { get; }

    /// <summary>Least squares coefficients and residuals: the search works on residuals, so a large mean costs no digits.</summary>
    public (double[] Coefficients, double[] Residuals) Ordinary { get; }

    public int RandomColumns => OwnerOfColumn.Length;

    public int FixedColumns => Qr.Rank;

    private void Require(RepeatedPulls? repeated, int[] plots)
    {
        foreach (var (term, groups) in Random.Zip(Groups))
        {
            var units = groups.Distinct().Count();
            if (units < 2)
            {
                throw new NotEstimableException($"The variance of {term}", "there is only one such unit");
            }

            if (plots.Zip(groups).Distinct().Count() == units)
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
            var full = rows.Select(FullRow).ToArray();
            int[] columns = [.. Enumerable.Range(0, RandomColumns + FixedColumns).Where(column => full.Any(row => row[column] != 0))];
            var values = Matrix.FromRows([.. full.Select(row => columns.Select(column => row[column]).ToArray())], columns.Length);
            var alike = subjects.FindIndex(other => other.Pattern == patterns[key] && other.Values.SameAs(values));
            subjects.Add(new Subject(rows, positions, patterns[key], alike < 0 ? subjects.Count : subjects[alike].Kind, columns, values));
        }

        return subjects;
    }

    private double[] FullRow(int row)
    {
        var full = new double[RandomColumns + FixedColumns];
        for (int term = 0, offset = 0; term < Groups.Length; term++)
        {
            full[offset + Groups[term][row]] = 1;
            offset += OwnerOfColumn.Count(owner => owner == term);
        }

        Search.Row(row).CopyTo(full, RandomColumns);
        return full;
    }

    private (double[] Coefficients, double[] Residuals) Residuals()
    {
        var mean = Data.Response[0] + Data.Response.Average(value => value - Data.Response[0]);
        double[] residuals = [.. Data.Response.Select(value => value - mean)];
        Qr.ApplyTransposed(residuals);
        var coefficients = Qr.SolveTriangle(residuals);
        coefficients[0] += mean;
        Array.Clear(residuals, 0, Qr.Rank);
        Qr.Apply(residuals);
        return (coefficients, residuals);
    }
}
