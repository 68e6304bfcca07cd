using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The fixed effects taken out of the mixed model equations block by block: D = X'R^-1X, E = D^-1X'R^-1Z, and what is left between the
/// random units, K = Z'R^-1(Z - XE).
/// </summary>
internal sealed class EffectElimination
{
    private readonly MixedDesign _design;

    private EffectElimination(MixedDesign design, Cholesky[] factors, Matrix[] carried, Matrix left)
    {
        _design = design;
        Factors = factors;
        Carried = carried;
        Left = left;
        LogDeterminant = factors.Sum(factor => factor.LogDeterminant);
    }

    /// <summary>The factor of D for each block.</summary>
    public Cholesky[] Factors { get; }

    /// <summary>E of each block: its effects by its units.</summary>
    public Matrix[] Carried { get; }

    /// <summary>K, units by units.</summary>
    public Matrix Left { get; }

    /// <summary>log |D|.</summary>
    public double LogDeterminant { get; }

    /// <param name="design">The design.</param>
    /// <param name="moments">[Z X]'R^-1[Z X] of each block.</param>
    /// <returns>Null where D is not positive definite to working precision.</returns>
    public static EffectElimination? TryOf(MixedDesign design, Matrix[] moments)
    {
        var factors = new Cholesky[moments.Length];
        var carried = new Matrix[moments.Length];
        var left = new Matrix(design.RandomColumns, design.RandomColumns);
        foreach (var (index, block) in design.Blocks.Index())
        {
            var (units, effects) = (block.Units.Length, block.Effects.Length);
            if (Cholesky.TryFactor(moments[index].Part(units, units, effects, effects)) is not { } factor)
            {
                return null;
            }

            var across = moments[index].Part(units, 0, effects, units);
            factors[index] = factor;
            carried[index] = factor.SolveUpper(factor.SolveLower(across));
            var own = moments[index].Part(0, 0, units, units);
            own.AddTransposedProduct(across, carried[index], -1);
            left.AddAt(block.Units, block.Units, own, 1);
        }

        return new EffectElimination(design, factors, carried, left);
    }

    /// <summary>The response after the fixed effects: its square, its loading on the units, and the effects alone.</summary>
    /// <param name="moments">[Z X]'R^-1 y of each block.</param>
    public (double Square, double[] Units, double[][] Effects) Response(double[][] moments)
    {
        var square = 0.0;
        var units = new double[_design.RandomColumns];
        var effects = new double[moments.Length][];
        foreach (var (index, block) in _design.Blocks.Index())
        {
            var right = moments[index].AsSpan(block.Units.Length);
            effects[index] = Factors[index].Solve(right);
            square += VectorKernel.Dot(right, effects[index]);
            for (var unit = 0; unit < block.Units.Length; unit++)
            {
                units[block.Units[unit]] += moments[index][unit];
                for (var effect = 0; effect < right.Length; effect++)
                {
                    units[block.Units[unit]] -= Carried[index][effect, unit] * right[effect];
                }
            }
        }

        return (square, units, effects);
    }

    /// <summary>The factor of I + S K S for random units of relative standard deviations S.</summary>
    public Cholesky? TryFactorUnits(double[] deviations)
    {
        var corner = new Matrix(deviations.Length, deviations.Length);
        for (var row = 0; row < deviations.Length; row++)
        {
            for (var column = 0; column < deviations.Length; column++)
            {
                corner[row, column] = (row == column ? 1 : 0) + (deviations[row] * Left[row, column] * deviations[column]);
            }
        }

        return Cholesky.TryFactor(corner);
    }

    /// <summary>N = S(I + S K S)^-1 S: the covariance of the units given the data, also where a deviation is zero.</summary>
    public static Matrix UnitCovariance(Cholesky factor, double[] deviations)
    {
        var covariance = factor.Inverse();
        for (var row = 0; row < deviations.Length; row++)
        {
            for (var column = 0; column < deviations.Length; column++)
            {
                covariance[row, column] *= deviations[row] * deviations[column];
            }
        }

        return covariance;
    }

    /// <summary>The inverse of the mixed model equations within one block and its units.</summary>
    public Matrix InverseOf(int index, Matrix unitCovariance)
    {
        var block = _design.Blocks[index];
        var (units, effects) = (block.Units.Length, block.Effects.Length);
        var inverse = new Matrix(units + effects, units + effects);
        int[] unitPlaces = [.. Enumerable.Range(0, units)];
        int[] effectPlaces = [.. Enumerable.Range(units, effects)];
        var own = unitCovariance.At(block.Units, block.Units);
        var across = Carried[index].Times(own);
        inverse.AddAt(unitPlaces, unitPlaces, own, 1);
        inverse.AddAt(effectPlaces, unitPlaces, across, -1);
        inverse.AddAt(unitPlaces, effectPlaces, across.Transposed(), -1);
        inverse.AddAt(effectPlaces, effectPlaces, Factors[index].Inverse(), 1);
        inverse.AddAt(effectPlaces, effectPlaces, across.Times(Carried[index].Transposed()), 1);
        return inverse;
    }
}
