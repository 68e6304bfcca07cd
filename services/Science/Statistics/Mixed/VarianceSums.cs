using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The sums that the inference needs of every covariance parameter, without any matrix as large as the data. With E and K of
/// <see cref="EffectElimination"/>, N the covariance of the units given the data, J = I - NK and Z0 = Z - XE: the estimator of the fixed effects is
/// O = D^-1X'R^-1 - EN Z0'R^-1, OZ = EJ, and PZ = R^-1 Z0 J. A parameter of the pulls with derivative R_i enters by
/// a_i = X'R^-1R_iR^-1X, g_i = X'R^-1R_iR^-1Z0 and y_i = Z0'R^-1R_iR^-1Z0.
/// </summary>
internal sealed class VarianceSums
{
    private readonly MixedDesign _design;
    private readonly WhitenedRows _rows;
    private readonly EffectElimination _elimination;
    private readonly IReadOnlyList<Matrix[]> _divided;
    private readonly Matrix[] _inverses;
    private readonly Matrix _spread;

    /// <param name="design">The fitted design.</param>
    /// <param name="variances">Variances of the random terms.</param>
    /// <param name="pulls">Covariance between the pulls of a plot.</param>
    /// <param name="pullDerivatives">Its derivatives by its parameters.</param>
    /// <returns>Null where the covariance of the rows or of the fixed effects is singular.</returns>
    public static VarianceSums? TryBuild(MixedDesign design, double[] variances, Matrix pulls, IReadOnlyList<Matrix> pullDerivatives)
    {
        double[] deviations = [.. design.OwnerOfColumn.Select(owner => Math.Sqrt(variances[owner]))];
        return WhitenedRows.TryBuild(design, pulls) is { } rows
            && EffectElimination.TryOf(design, rows.Moments()) is { } elimination
            && elimination.TryFactorUnits(deviations) is { } units
            ? new VarianceSums(design, rows, elimination, EffectElimination.UnitCovariance(units, deviations), pullDerivatives)
            : null;
    }

    private VarianceSums(MixedDesign design, WhitenedRows rows, EffectElimination elimination, Matrix covariance, IReadOnlyList<Matrix> derivatives)
    {
        (_design, _rows, _elimination, Covariance) = (design, rows, elimination, covariance);
        var patterns = design.Subjects.DistinctBy(subject => subject.Pattern).OrderBy(subject => subject.Pattern).ToList();
        _divided = [.. derivatives.Select(derivative => patterns.Select(subject => rows.Divided(subject, derivative)).ToArray())];
        _inverses = [.. elimination.Factors.Select(factor => factor.Inverse())];
        Turned = covariance.Times(elimination.Left).Scaled(-1);
        for (var unit = 0; unit < Turned.Rows; unit++)
        {
            Turned[unit, unit] += 1;
        }

        _spread = elimination.Left.Times(Turned);
        Pulls = [.. _divided.Select(weights => Sum(pattern => weights[pattern]))];
    }

    /// <summary>N.</summary>
    public Matrix Covariance { get; }

    /// <summary>J = I - NK.</summary>
    public Matrix Turned { get; }

    /// <summary>D^-1 of each block.</summary>
    public Matrix[] Inverses => _inverses;

    /// <summary>E of each block.</summary>
    public Matrix[] Carried => _elimination.Carried;

    /// <summary>a_i, g_i and y_i of each parameter of the pulls.</summary>
    public IReadOnlyList<WeightedSums> Pulls { get; }

    public int[] UnitsOf(int block) => _design.Blocks[block].Units;

    private int RandomTerms => _design.Random.Count;

    /// <summary>Expected REML information of the covariance parameters: half of trace(P V_i P V_j).</summary>
    public Matrix ParameterInformation()
    {
        var count = RandomTerms + Pulls.Count;
        var information = new Matrix(count, count);
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                information[i, j] = 0.5 * (i < RandomTerms ? UnitTrace(i, j) : j < RandomTerms ? CrossTrace(j, i - RandomTerms) : PullTrace(i - RandomTerms, j - RandomTerms));
                information[j, i] = information[i, j];
            }
        }

        return information;
    }

    /// <summary>The same sums for the weights R^-1 [sum of W_ij R_i R^-1 R_j] R^-1, i and j over the parameters of the pulls.</summary>
    public WeightedSums Products(Matrix uncertainty)
    {
        var weights = Enumerable.Range(0, _divided.Count == 0 ? 0 : _divided[0].Length).Select(pattern =>
        {
            var size = _divided[0][pattern].Rows;
            var sum = new Matrix(size, size);
            for (var i = 0; i < _divided.Count; i++)
            {
                for (var j = 0; j < _divided.Count; j++)
                {
                    sum.Add(_divided[i][pattern].Times(_divided[j][pattern]), uncertainty[RandomTerms + i, RandomTerms + j]);
                }
            }

            return sum;
        }).ToArray();
        return Sum(pattern => weights[pattern]);
    }

    /// <summary>Between units, each element times the weight of the terms its row and column belong to.</summary>
    public Matrix WeightedSpread(Matrix uncertainty)
    {
        var weighted = _spread.Scaled(1);
        for (var row = 0; row < weighted.Rows; row++)
        {
            for (var column = 0; column < weighted.Columns; column++)
            {
                weighted[row, column] *= uncertainty[_design.OwnerOfColumn[row], _design.OwnerOfColumn[column]];
            }
        }

        return weighted;
    }

    /// <summary>J diag(weight of each unit's term) J'.</summary>
    public Matrix TurnedAround(Func<int, double> weightOfTerm)
    {
        var scaled = Turned.Transposed();
        for (var unit = 0; unit < scaled.Rows; unit++)
        {
            var weight = weightOfTerm(_design.OwnerOfColumn[unit]);
            foreach (ref var cell in scaled.Row(unit))
            {
                cell *= weight;
            }
        }

        return Turned.Times(scaled);
    }

    private double UnitTrace(int i, int j)
    {
        var sum = 0.0;
        for (var row = 0; row < _spread.Rows; row++)
        {
            for (var column = 0; column < _spread.Columns; column++)
            {
                sum += _design.OwnerOfColumn[row] == i && _design.OwnerOfColumn[column] == j ? _spread[row, column] * _spread[row, column] : 0;
            }
        }

        return sum;
    }

    /// <summary>Z_i'P R_j P Z_i = J_i' y_j J_i.</summary>
    private double CrossTrace(int term, int pull) => TurnedAround(owner => owner == term ? 1 : 0).InnerProduct(Pulls[pull].Units);

    private double PullTrace(int i, int j)
    {
        var sum = _design.Subjects.Sum(subject => _divided[i][subject.Pattern].InnerProduct(_divided[j][subject.Pattern]));
        var both = Sum(pattern => _divided[i][pattern].Times(_divided[j][pattern]));
        var units = both.Units.Scaled(1);
        foreach (var (index, block) in _design.Blocks.Index())
        {
            var (first, second) = (_inverses[index].Times(Pulls[i].Effects[index]), _inverses[index].Times(Pulls[j].Effects[index]));
            sum += first.Transposed().InnerProduct(second) - (2 * _inverses[index].InnerProduct(both.Effects[index]));
            units.AddAt(block.Units, block.Units, Pulls[i].Across[index].TransposedTimes(_inverses[index].Times(Pulls[j].Across[index])), -1);
        }

        var (left, right) = (Covariance.Times(Pulls[i].Units), Covariance.Times(Pulls[j].Units));
        return sum - (2 * Covariance.InnerProduct(units)) + left.Transposed().InnerProduct(right);
    }

    private WeightedSums Sum(Func<int, Matrix> weight)
    {
        var moments = _rows.Moments(weight);
        var effects = new Matrix[moments.Length];
        var across = new Matrix[moments.Length];
        var between = new Matrix(_design.RandomColumns, _design.RandomColumns);
        foreach (var (index, block) in _design.Blocks.Index())
        {
            var (units, size) = (block.Units.Length, block.Effects.Length);
            var carried = _elimination.Carried[index];
            effects[index] = moments[index].Part(units, units, size, size);
            across[index] = moments[index].Part(units, 0, size, units);
            across[index].Add(effects[index].Times(carried), -1);
            var own = moments[index].Part(0, 0, units, units);
            own.Add(moments[index].Part(0, units, units, size).Times(carried), -1);
            own.AddTransposedProduct(carried, across[index], -1);
            between.AddAt(block.Units, block.Units, own, 1);
        }

        return new WeightedSums(effects, across, between);
    }
}
