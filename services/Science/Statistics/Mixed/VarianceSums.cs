using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The sums that the inference needs, over sets of rows that share no random unit: U = V^-1 X, S_i = V_i U, T_i = V^-1 S_i where V_i is
/// the derivative of V by covariance parameter i.
/// </summary>
internal sealed class VarianceSums
{
    private readonly List<(Matrix[] S, Matrix[] T, int Count)> _sets = [];
    private readonly Matrix _traces;
    private readonly int _parameters;

    public VarianceSums(MixedDesign design, double[] variances, Matrix pulls, IReadOnlyList<Matrix> pullDerivatives)
    {
        _parameters = variances.Length + pullDerivatives.Count;
        _traces = new Matrix(_parameters, _parameters);
        Information = new Matrix(design.FixedColumns, design.FixedColumns);
        First = [.. Enumerable.Range(0, _parameters).Select(_ => new Matrix(design.FixedColumns, design.FixedColumns))];
        var kinds = new List<(Matrix FixedRows, Matrix Covariance, Matrix[] Derivatives, int Count)>();
        foreach (var rows in new RowSets(design).All)
        {
            Matrix[] derivatives = [.. variances.Select((_, term) => rows.SameUnit(term)), .. pullDerivatives.Select(rows.WithinPlots)];
            var covariance = rows.WithinPlots(pulls);
            for (var term = 0; term < variances.Length; term++)
            {
                covariance.Add(derivatives[term], variances[term]);
            }

            // Complete blocks are all alike: one stands for them.
            var fixedRows = rows.FixedRows;
            var known = kinds.FindIndex(kind => kind.FixedRows.SameAs(fixedRows) && kind.Covariance.SameAs(covariance) && kind.Derivatives.Zip(derivatives).All(pair => pair.First.SameAs(pair.Second)));
            if (known < 0)
            {
                kinds.Add((fixedRows, covariance, derivatives, 1));
            }
            else
            {
                kinds[known] = kinds[known] with { Count = kinds[known].Count + 1 };
            }
        }

        foreach (var (fixedRows, covariance, derivatives, count) in kinds)
        {
            Add(fixedRows, covariance, derivatives, count);
        }
    }

    /// <summary>X'V^-1X.</summary>
    public Matrix Information { get; }

    /// <summary>-P_i = X'V^-1 V_i V^-1 X; the sign cancels wherever it is used.</summary>
    public Matrix[] First { get; }

    /// <summary>Expected REML information of the covariance parameters.</summary>
    public Matrix ParameterInformation(Matrix covariance)
    {
        var information = new Matrix(_parameters, _parameters);
        var products = First.Select(covariance.Times).ToArray();
        var left = _sets.Select(set => set.S.Select(part => part.Times(covariance)).ToArray()).ToArray();
        for (var i = 0; i < _parameters; i++)
        {
            var turned = products[i].Transposed();
            for (var j = 0; j <= i; j++)
            {
                var crossed = _sets.Zip(left, (set, parts) => set.Count * parts[i].InnerProduct(set.T[j])).Sum();
                information[i, j] = 0.5 * (_traces[i, j] - (2 * crossed) + turned.InnerProduct(products[j]));
                information[j, i] = information[i, j];
            }
        }

        return information;
    }

    /// <summary>Sum over i, j of W_ij (Q_ij - P_i covariance P_j), with Q_ij = S_i'T_j.</summary>
    public Matrix Correction(Matrix covariance, Matrix uncertainty)
    {
        var sum = new Matrix(covariance.Rows, covariance.Columns);
        for (var i = 0; i < _parameters; i++)
        {
            foreach (var (s, t, count) in _sets)
            {
                sum.AddTransposedProduct(s[i], Combine(t, uncertainty, i), count);
            }

            sum.Add(First[i].Times(covariance).Times(Combine(First, uncertainty, i)), -1);
        }

        var symmetric = sum.Transposed();
        symmetric.Add(sum, 1);
        return symmetric.Scaled(0.5);
    }

    private static Matrix Combine(Matrix[] parts, Matrix weights, int row)
    {
        var sum = new Matrix(parts[0].Rows, parts[0].Columns);
        for (var index = 0; index < parts.Length; index++)
        {
            sum.Add(parts[index], weights[row, index]);
        }

        return sum;
    }

    private void Add(Matrix fixedRows, Matrix covariance, Matrix[] derivatives, int count)
    {
        var inverse = (Cholesky.TryFactor(covariance)
            ?? throw new NotEstimableException("The uncertainty of the fixed effects", "the covariance of the rows is singular")).Inverse();
        var u = inverse.Times(fixedRows);
        Information.AddTransposedProduct(fixedRows, u, count);
        var s = derivatives.Select(derivative => derivative.Times(u)).ToArray();
        var t = s.Select(inverse.Times).ToArray();
        var spread = derivatives.Select(derivative => derivative.Times(inverse)).ToArray();
        for (var i = 0; i < _parameters; i++)
        {
            First[i].AddTransposedProduct(u, s[i], count);
            var turned = spread[i].Transposed();
            for (var j = 0; j <= i; j++)
            {
                _traces[i, j] += count * turned.InnerProduct(spread[j]);
            }
        }

        _sets.Add((s, t, count));
    }
}
