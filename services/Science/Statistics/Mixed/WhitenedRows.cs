using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The rows of every plot divided by the Cholesky factor of their covariance, and their sums of products block by block.</summary>
internal sealed class WhitenedRows
{
    private readonly MixedDesign _design;
    private readonly Dictionary<int, Cholesky> _factors = [];
    private readonly Dictionary<int, Matrix> _kinds = [];
    private readonly double[][] _responses;

    private WhitenedRows(MixedDesign design)
    {
        _design = design;
        _responses = new double[design.Subjects.Count][];
    }

    /// <summary>y'R^-1 y.</summary>
    public double ResponseSquare { get; private set; }

    /// <summary>log |R|.</summary>
    public double LogDeterminant { get; private set; }

    /// <returns>Null where the shape is not positive definite to working precision.</returns>
    public static WhitenedRows? TryBuild(MixedDesign design, Matrix shape)
    {
        var rows = new WhitenedRows(design);
        for (var number = 0; number < design.Subjects.Count; number++)
        {
            if (!rows.TryAdd(number, shape))
            {
                return null;
            }
        }

        return rows;
    }

    /// <summary>A matrix between pulls, for the pulls of a pattern, divided by the factor from both sides: L^-1 M L'^-1.</summary>
    public Matrix Divided(Subject subject, Matrix pulls)
    {
        var factor = _factors[subject.Pattern];
        return factor.SolveLower(factor.SolveLower(pulls.At(subject.Positions, subject.Positions)).Transposed()).Transposed();
    }

    /// <summary>For each block the sums over its plots of [Z X]'W[Z X], the rows divided; units before effects.</summary>
    /// <param name="weight">W of a plot by its pattern; null for one, which is [Z X]'R^-1[Z X].</param>
    public Matrix[] Moments(Func<int, Matrix>? weight = null)
    {
        var products = new Dictionary<int, Matrix>();
        return [.. _design.Blocks.Select(block =>
        {
            var sum = new Matrix(block.Units.Length + block.Effects.Length, block.Units.Length + block.Effects.Length);
            foreach (var plot in block.Plots)
            {
                if (!products.TryGetValue(plot.Subject.Kind, out var product))
                {
                    var values = _kinds[plot.Subject.Kind];
                    products[plot.Subject.Kind] = product = values.TransposedTimes(weight is null ? values : weight(plot.Subject.Pattern).Times(values));
                }

                sum.AddAt(plot.Places, plot.Places, product, 1);
            }

            return sum;
        })];
    }

    /// <summary>For each block [Z X]'R^-1 y.</summary>
    public double[][] ResponseMoments() => [.. _design.Blocks.Select(block =>
    {
        var sum = new double[block.Units.Length + block.Effects.Length];
        foreach (var plot in block.Plots)
        {
            var values = _kinds[plot.Subject.Kind];
            var response = _responses[plot.Number];
            for (var row = 0; row < response.Length; row++)
            {
                for (var column = 0; column < plot.Places.Length; column++)
                {
                    sum[plot.Places[column]] += values[row, column] * response[row];
                }
            }
        }

        return sum;
    })];

    /// <summary>
    /// Minus twice the derivative of the log-likelihood by the elements of the shape, added up over the plots of a block: P - Py(Py)'/variance,
    /// where P = R^-1 - R^-1[Z X] inverse [Z X]'R^-1, placed at the plot's pulls.
    /// </summary>
    public void AddSensitivity(Matrix sum, EffectBlock block, Matrix inverse, double[] solution, double variance)
    {
        foreach (var plot in block.Plots)
        {
            var values = _kinds[plot.Subject.Kind];
            var response = _responses[plot.Number];
            var fitted = values.Times(plot.Places.Select(place => solution[place]).ToArray());
            var inner = values.Times(inverse.At(plot.Places, plot.Places)).Times(values.Transposed());
            for (var row = 0; row < response.Length; row++)
            {
                for (var column = 0; column < response.Length; column++)
                {
                    var left = (response[row] - fitted[row]) * (response[column] - fitted[column]) / variance;
                    inner[row, column] = (row == column ? 1 : 0) - inner[row, column] - left;
                }
            }

            var factor = _factors[plot.Subject.Pattern];
            sum.AddAt(plot.Subject.Positions, plot.Subject.Positions, factor.SolveUpper(factor.SolveUpper(inner).Transposed()), 1);
        }
    }

    private bool TryAdd(int number, Matrix shape)
    {
        var subject = _design.Subjects[number];
        if (!_factors.TryGetValue(subject.Pattern, out var factor))
        {
            if (Cholesky.TryFactor(shape.At(subject.Positions, subject.Positions)) is not { } found)
            {
                return false;
            }

            _factors.Add(subject.Pattern, factor = found);
        }

        if (!_kinds.ContainsKey(subject.Kind))
        {
            _kinds.Add(subject.Kind, factor.SolveLower(subject.Values));
        }

        var response = factor.SolveLower([.. subject.Rows.Select(row => _design.Ordinary.Residuals[row])]);
        _responses[number] = response;
        ResponseSquare += VectorKernel.Dot(response, response);
        LogDeterminant += factor.LogDeterminant;
        return true;
    }
}
