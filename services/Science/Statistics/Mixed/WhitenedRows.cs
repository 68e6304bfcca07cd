using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The rows of every plot divided by the Cholesky factor of their covariance, and their sums of products.</summary>
internal sealed class WhitenedRows
{
    private readonly MixedDesign _design;
    private readonly Dictionary<int, Cholesky> _factors = [];
    private readonly Dictionary<int, (Matrix Values, Matrix Products)> _kinds = [];
    private readonly List<(Subject Subject, Matrix Values, double[] Response)> _plots = [];

    private WhitenedRows(MixedDesign design)
    {
        _design = design;
        var size = design.RandomColumns + design.FixedColumns;
        Products = new Matrix(size, size);
        ResponseProducts = new double[size];
    }

    /// <summary>[Z X]'R^-1[Z X].</summary>
    public Matrix Products { get; }

    /// <summary>[Z X]'R^-1 y.</summary>
    public double[] ResponseProducts { get; }

    /// <summary>y'R^-1 y.</summary>
    public double ResponseSquare { get; private set; }

    /// <summary>log |R|.</summary>
    public double LogDeterminant { get; private set; }

    /// <returns>Null where the shape is not positive definite to working precision.</returns>
    public static WhitenedRows? TryBuild(MixedDesign design, Matrix shape)
    {
        var rows = new WhitenedRows(design);
        return design.Subjects.All(subject => rows.TryAdd(subject, shape)) ? rows : null;
    }

    /// <summary>
    /// Minus twice the derivative of the log-likelihood by the elements of the shape: the sum over plots of P - Py(Py)'/variance,
    /// where P = R^-1 - R^-1[Z X] inverse [Z X]'R^-1, placed at the plot's pulls.
    /// </summary>
    public Matrix ShapeSensitivity(double[] scale, Matrix inverse, double[] solution, double variance)
    {
        var sum = new Matrix(_design.Times.Count, _design.Times.Count);
        foreach (var (subject, values, response) in _plots)
        {
            var columns = subject.Columns;
            var scaled = new Matrix(values.Rows, columns.Length);
            var part = new Matrix(columns.Length, columns.Length);
            for (var column = 0; column < columns.Length; column++)
            {
                for (var row = 0; row < values.Rows; row++)
                {
                    scaled[row, column] = values[row, column] * scale[columns[column]];
                }

                for (var other = 0; other < columns.Length; other++)
                {
                    part[column, other] = inverse[columns[column], columns[other]];
                }
            }

            var local = columns.Select(column => solution[column]).ToArray();
            double[] left = [.. response.Zip(scaled.Times(local), (value, fitted) => value - fitted)];
            AddPlot(sum, subject, scaled.Times(part).Times(scaled.Transposed()), left, variance);
        }

        return sum;
    }

    private void AddPlot(Matrix sum, Subject subject, Matrix explained, double[] left, double variance)
    {
        var size = left.Length;
        var inner = new Matrix(size, size);
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                inner[row, column] = (row == column ? 1 : 0) - explained[row, column] - (left[row] * left[column] / variance);
            }
        }

        var factor = _factors[subject.Pattern];
        var half = factor.SolveUpper(inner);
        var whole = factor.SolveUpper(half.Transposed());
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                sum[subject.Positions[row], subject.Positions[column]] += whole[row, column];
            }
        }
    }

    private bool TryAdd(Subject subject, Matrix shape)
    {
        if (!_factors.TryGetValue(subject.Pattern, out var factor))
        {
            var size = subject.Positions.Length;
            var covariance = new Matrix(size, size);
            for (var row = 0; row < size; row++)
            {
                for (var column = 0; column < size; column++)
                {
                    covariance[row, column] = shape[subject.Positions[row], subject.Positions[column]];
                }
            }

            if (Cholesky.TryFactor(covariance) is not { } found)
            {
                return false;
            }

            _factors.Add(subject.Pattern, factor = found);
        }

        if (!_kinds.TryGetValue(subject.Kind, out var kind))
        {
            var whitened = factor.SolveLower(subject.Values);
            _kinds.Add(subject.Kind, kind = (whitened, whitened.TransposedTimes(whitened)));
        }

        var response = factor.SolveLower([.. subject.Rows.Select(row => _design.Ordinary.Residuals[row])]);
        _plots.Add((subject, kind.Values, response));
        Accumulate(subject.Columns, kind, response);
        LogDeterminant += factor.LogDeterminant;
        return true;
    }

    private void Accumulate(int[] columns, (Matrix Values, Matrix Products) kind, double[] response)
    {
        for (var row = 0; row < columns.Length; row++)
        {
            var target = Products.Row(columns[row]);
            for (var column = 0; column < columns.Length; column++)
            {
                target[columns[column]] += kind.Products[row, column];
            }

            ResponseProducts[columns[row]] += VectorKernel.Dot(kind.Values.Column(row), response);
        }

        ResponseSquare += VectorKernel.Dot(response, response);
    }
}
