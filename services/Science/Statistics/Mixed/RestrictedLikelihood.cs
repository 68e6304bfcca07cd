using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The REML log-likelihood with the overall variance profiled out, and its analytic gradient. Rows are whitened plot by plot; one
/// Cholesky factor of [G^-1 + Z'R^-1Z, Z'R^-1X; X'R^-1X] then gives determinant, coefficients and residual. Random standard
/// deviations enter as relative numbers whose sign does not matter, so zero is an ordinary point. Henderson 1975; Patterson and
/// Thompson 1971; Bates and others 2015 for the scaling (from memory).
/// </summary>
internal sealed class RestrictedLikelihood(MixedDesign design)
{
    private const double Step = 1e-6;

    private readonly int _size = design.RandomColumns + design.FixedColumns;
    private readonly int _freedom = design.Data.Rows - design.FixedColumns;
    private readonly IReadOnlyList<int[]> _blocks = BlocksOf(design);

    public Likelihood? Evaluate(double[] free)
    {
        var random = design.Random.Count;
        var shape = design.Structure.Shape(free.AsSpan(random), design.Times);
        if (WhitenedRows.TryBuild(design, shape) is not { } rows)
        {
            return null;
        }

        var scale = new double[_size];
        for (var column = 0; column < _size; column++)
        {
            scale[column] = column < design.RandomColumns ? free[design.OwnerOfColumn[column]] : 1;
        }

        if (BorderedFactor.TryFactor(Scaled(rows.Products, scale), design.RandomColumns, _blocks) is not { } factor)
        {
            return null;
        }

        var right = rows.ResponseProducts.Zip(scale, (product, weight) => product * weight).ToArray();
        var solution = factor.Solve(right);
        var residual = rows.ResponseSquare - VectorKernel.Dot(right, solution);
        var variance = residual / _freedom;
        if (!(variance > 0))
        {
            return null;
        }

        var value = -0.5 * ((_freedom * (Math.Log(2 * Math.PI * variance) + 1)) + rows.LogDeterminant + factor.LogDeterminant + design.Search.LogChange);
        return new Likelihood(value, variance, solution, () => Gradient(free, scale, rows, factor, solution, variance));
    }

    private double[] Gradient(double[] free, double[] scale, WhitenedRows rows, BorderedFactor factor, double[] solution, double variance)
    {
        var gradient = new double[free.Length];
        for (var column = 0; column < design.RandomColumns; column++)
        {
            // z'Pz and z'Py for one unit's indicator z.
            double[] scaled = [.. rows.Products.Row(column).ToArray().Zip(scale, (product, weight) => product * weight)];
            var spread = rows.Products[column, column] - VectorKernel.Dot(scaled, factor.Solve(scaled));
            var pull = rows.ResponseProducts[column] - VectorKernel.Dot(scaled, solution);
            var owner = design.OwnerOfColumn[column];
            gradient[owner] -= free[owner] * (spread - (pull * pull / variance));
        }

        var sensitivity = rows.ShapeSensitivity(scale, factor.InverseWithinBlocks(_size), solution, variance);
        for (var index = design.Random.Count; index < free.Length; index++)
        {
            gradient[index] = -0.5 * sensitivity.InnerProduct(ShapeDerivative(free, index));
        }

        return gradient;
    }

    /// <summary>The shape is a small closed formula; its central difference is good to ten digits.</summary>
    private Matrix ShapeDerivative(double[] free, int index)
    {
        var moved = free.AsSpan(design.Random.Count).ToArray();
        var position = index - design.Random.Count;
        moved[position] = free[index] + Step;
        var up = design.Structure.Shape(moved, design.Times);
        moved[position] = free[index] - Step;
        up.Add(design.Structure.Shape(moved, design.Times), -1);
        return up.Scaled(1 / (2 * Step));
    }

    /// <summary>Columns of fixed effects that some plot joins, directly or through others.</summary>
    private static List<int[]> BlocksOf(MixedDesign design)
    {
        var owner = Enumerable.Range(0, design.RandomColumns + design.FixedColumns).ToArray();
        foreach (var subject in design.Subjects)
        {
            var joined = subject.Columns.Where(column => column >= design.RandomColumns).Select(column => owner[column]).ToHashSet();
            var target = joined.Min();
            for (var column = design.RandomColumns; column < owner.Length && joined.Count > 1; column++)
            {
                owner[column] = joined.Contains(owner[column]) ? target : owner[column];
            }
        }

        return [.. Enumerable.Range(design.RandomColumns, design.FixedColumns).GroupBy(column => owner[column]).Select(block => block.ToArray())];
    }

    private Matrix Scaled(Matrix products, double[] scale)
    {
        var result = new Matrix(_size, _size);
        for (var row = 0; row < _size; row++)
        {
            for (var column = 0; column < _size; column++)
            {
                result[row, column] = scale[row] * products[row, column] * scale[column];
            }

            result[row, row] += row < design.RandomColumns ? 1 : 0;
        }

        return result;
    }
}
