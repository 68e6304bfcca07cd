namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>The columns of a linear model: an intercept, then each term's columns in the order of the terms.</summary>
internal sealed class ModelMatrix
{
    private readonly ModelData _data;
    private readonly Coding _coding;

    private ModelMatrix(ModelData data, IReadOnlyList<Term> terms, Coding coding)
    {
        _data = data;
        Terms = terms;
        _coding = coding;
        TermOf = [-1, .. terms.SelectMany((term, index) => Enumerable.Repeat(index, WidthOf(term)))];
        Values = Matrix.FromRows(DataRows(), TermOf.Count);
    }

    public IReadOnlyList<Term> Terms { get; }

    /// <summary>Index of the term behind each column; -1 for the intercept.</summary>
    public IReadOnlyList<int> TermOf { get; }

    public Matrix Values { get; }

    public double[][] Columns => [.. Enumerable.Range(0, Values.Columns).Select(Values.Column)];

    public static ModelMatrix Build(ModelData data, IReadOnlyList<Term> terms, Coding coding)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(terms);
        return terms.Distinct().Count() == terms.Count
            ? new ModelMatrix(data, terms, coding)
            : throw new ArgumentException($"Found a term twice in {string.Join(" + ", terms)}; expected each once.", nameof(terms));
    }

    /// <summary>
    /// The row of a cell: named factors at their level, every other factor averaged over its levels with equal weights,
    /// covariates at their mean. Its product with the coefficients is the adjusted mean of that cell.
    /// </summary>
    public double[] CellRow(IReadOnlyDictionary<string, int> levels)
    {
        var row = new List<double> { 1 };
        foreach (var term in Terms)
        {
            row.AddRange(Product(term.Variables.Select(name => CellVector(name, levels))));
        }

        return [.. row];
    }

    public string ColumnName(int column)
    {
        if (TermOf[column] < 0)
        {
            return "(intercept)";
        }

        var term = Terms[TermOf[column]];
        var position = column - TermOf.Count(index => index < TermOf[column]);
        var parts = new List<string>();
        foreach (var name in term.Variables.Reverse())
        {
            var width = _data.IsFactor(name) ? _data.FactorNamed(name).Levels.Count - 1 : 1;
            parts.Insert(0, _data.IsFactor(name) ? $"{name}[{LevelOf(name, position % width)}]" : name);
            position /= width;
        }

        return string.Join(":", parts);
    }

    private string LevelOf(string factor, int column) =>
        _data.FactorNamed(factor).Levels[_coding == Coding.Reference ? column + 1 : column];

    private int WidthOf(Term term) =>
        term.Variables.Aggregate(1, (width, name) => width * (_data.IsFactor(name) ? _data.FactorNamed(name).Levels.Count - 1 : RequireCovariate(name)));

    private int RequireCovariate(string name) => _data.CovariateNamed(name) is not null ? 1 : 0;

    /// <summary>Rows alike in every factor and covariate are made once.</summary>
    private double[][] DataRows()
    {
        string[] names = [.. Terms.SelectMany(term => term.Variables).Distinct()];
        var factors = names.Where(_data.IsFactor).Select(name => _data.FactorNamed(name)).ToArray();
        if (factors.Length < names.Length)
        {
            return [.. Enumerable.Range(0, _data.Rows).Select(DataRow)];
        }

        var made = new Dictionary<long, double[]>();
        return [.. Enumerable.Range(0, _data.Rows).Select(row =>
        {
            var key = factors.Aggregate(0L, (place, factor) => checked((place * factor.Levels.Count) + factor.Codes[row]));
            return made.TryGetValue(key, out var known) ? known : made[key] = DataRow(row);
        })];
    }

    private double[] DataRow(int row) =>
        [1, .. Terms.SelectMany(term => Product(term.Variables.Select(name => DataVector(name, row))))];

    private double[] DataVector(string name, int row) =>
        _data.IsFactor(name) ? Code(_data.FactorNamed(name), _data.FactorNamed(name).Codes[row]) : [_data.CovariateNamed(name).Values[row]];

    private double[] CellVector(string name, IReadOnlyDictionary<string, int> levels)
    {
        if (!_data.IsFactor(name))
        {
            return [_data.CovariateNamed(name).Values.Average()];
        }

        var factor = _data.FactorNamed(name);
        if (levels.TryGetValue(name, out var level))
        {
            return Code(factor, level);
        }

        var average = new double[factor.Levels.Count - 1];
        Array.Fill(average, _coding == Coding.SumToZero ? 0 : 1.0 / factor.Levels.Count);
        return average;
    }

    private double[] Code(Factor factor, int level)
    {
        var width = factor.Levels.Count - 1;
        var code = new double[width];
        var position = _coding == Coding.SumToZero ? level : level - 1;
        if (_coding == Coding.SumToZero && level == width)
        {
            Array.Fill(code, -1);
        }
        else if (position >= 0)
        {
            code[position] = 1;
        }

        return code;
    }

    private static double[] Product(IEnumerable<double[]> vectors) =>
        vectors.Aggregate((left, right) => [.. left.SelectMany(_ => right, (a, b) => a * b)]);
}
