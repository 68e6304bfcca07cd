using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The REML log-likelihood with the overall variance profiled out, and its analytic gradient. Rows are whitened plot by plot, the fixed
/// effects eliminated block by block, and the random units last; determinant, coefficients and residual fall out on the way. Random standard
/// deviations enter as relative numbers whose sign does not matter, so zero is an ordinary point. Henderson 1975; Patterson and
/// Thompson 1971; Bates and others 2015 for the scaling (from memory).
/// </summary>
internal sealed class RestrictedLikelihood(MixedDesign design, CovarianceStructure structure)
{
    private const double Step = 1e-6;

    private readonly int _freedom = design.Data.Rows - design.FixedColumns;

    public Likelihood? Evaluate(double[] free)
    {
        var shape = structure.Shape(free.AsSpan(design.Random.Count), design.Times);
        double[] deviations = [.. design.OwnerOfColumn.Select(owner => free[owner])];
        if (WhitenedRows.TryBuild(design, shape) is not { } rows
            || EffectElimination.TryOf(design, rows.Moments()) is not { } elimination
            || elimination.TryFactorUnits(deviations) is not { } units)
        {
            return null;
        }

        var (square, loading, effects) = elimination.Response(rows.ResponseMoments());
        double[] scaled = [.. loading.Zip(deviations, (value, deviation) => value * deviation)];
        var unitSolution = units.Solve(scaled);
        var variance = (rows.ResponseSquare - square - VectorKernel.Dot(scaled, unitSolution)) / _freedom;
        if (!(variance > 0))
        {
            return null;
        }

        double[] random = [.. unitSolution.Zip(deviations, (value, deviation) => value * deviation)];
        var solutions = Solutions(elimination, random, effects);
        var value = -0.5 * ((_freedom * (Math.Log(2 * Math.PI * variance) + 1)) + rows.LogDeterminant + elimination.LogDeterminant + units.LogDeterminant + design.Search.LogChange);
        return new Likelihood(value, variance, Together(solutions), () => Gradient(free, rows, elimination, EffectElimination.UnitCovariance(units, deviations), loading, solutions, variance));
    }

    /// <summary>For each block the effects of its units, then its fixed effects.</summary>
    private double[][] Solutions(EffectElimination elimination, double[] random, double[][] effects) => [.. design.Blocks.Select((block, index) =>
    {
        double[] own = [.. block.Units.Select(unit => random[unit])];
        var taken = elimination.Carried[index].Times(own);
        return (double[])[.. own, .. effects[index].Zip(taken, (value, less) => value - less)];
    })];

    private double[] Together(double[][] solutions)
    {
        var together = new double[design.FixedColumns];
        foreach (var (block, solution) in design.Blocks.Zip(solutions))
        {
            for (var effect = 0; effect < block.Effects.Length; effect++)
            {
                together[block.Effects[effect]] = solution[block.Units.Length + effect];
            }
        }

        return together;
    }

    private double[] Gradient(double[] free, WhitenedRows rows, EffectElimination elimination, Matrix covariance, double[] loading, double[][] solutions, double variance)
    {
        var gradient = new double[free.Length];
        // Z'PZ and Z'Py of the random units.
        var (left, carried) = (elimination.Left, covariance.Times(elimination.Left));
        var drawn = left.Times(covariance.Times(loading));
        for (var unit = 0; unit < loading.Length; unit++)
        {
            var spread = left[unit, unit] - VectorKernel.Dot(left.Row(unit), carried.Column(unit));
            var pull = loading[unit] - drawn[unit];
            gradient[design.OwnerOfColumn[unit]] -= free[design.OwnerOfColumn[unit]] * (spread - (pull * pull / variance));
        }

        if (free.Length == design.Random.Count)
        {
            return gradient;
        }

        var sensitivity = new Matrix(design.Times.Count, design.Times.Count);
        foreach (var (index, block) in design.Blocks.Index())
        {
            rows.AddSensitivity(sensitivity, block, elimination.InverseOf(index, covariance), solutions[index], variance);
        }

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
        var up = structure.Shape(moved, design.Times);
        moved[position] = free[index] - Step;
        up.Add(structure.Shape(moved, design.Times), -1);
        return up.Scaled(1 / (2 * Step));
    }
}
