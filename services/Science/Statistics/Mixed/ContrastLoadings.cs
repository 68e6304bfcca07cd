using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>Combinations of fixed effects, cut into blocks and carried onto the bases of <see cref="BlockedForm"/>.</summary>
internal sealed class ContrastLoadings
{
    /// <param name="blocks">Blocks of fixed effects.</param>
    /// <param name="bases">For each basis the part of every block: its effects by its units.</param>
    /// <param name="units">Random units altogether.</param>
    /// <param name="contrasts">One a row, over all fixed effects in the order of <see cref="SearchColumns"/>.</param>
    public ContrastLoadings(IReadOnlyList<EffectBlock> blocks, IReadOnlyList<Matrix[]> bases, int units, Matrix contrasts)
    {
        Count = contrasts.Rows;
        Parts = new (int[], Matrix)[blocks.Count];
        Bases = [.. bases.Select(_ => new Matrix(contrasts.Rows, units))];
        foreach (var (index, block) in blocks.Index())
        {
            int[] rows = [.. Enumerable.Range(0, contrasts.Rows).Where(row => Touches(contrasts.Row(row), block.Effects))];
            var part = contrasts.At(rows, block.Effects);
            Parts[index] = (rows, part);
            foreach (var (basis, target) in rows.Length == 0 ? [] : bases.Zip(Bases))
            {
                target.AddAt(rows, block.Units, part.Times(basis[index]), 1);
            }
        }
    }

    public int Count { get; }

    /// <summary>For each block the contrasts that touch it, and their columns there.</summary>
    public (int[] Rows, Matrix Columns)[] Parts { get; }

    /// <summary>Contrasts times each basis.</summary>
    public Matrix[] Bases { get; }

    private static bool Touches(ReadOnlySpan<double> contrast, int[] effects)
    {
        foreach (var effect in effects)
        {
            if (contrast[effect] != 0)
            {
                return true;
            }
        }

        return false;
    }
}
