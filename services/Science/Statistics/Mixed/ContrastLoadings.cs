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
        Parts = new Matrix?[blocks.Count];
        Bases = [.. bases.Select(_ => new Matrix(contrasts.Rows, units))];
        int[] all = [.. Enumerable.Range(0, contrasts.Rows)];
        foreach (var (index, block) in blocks.Index())
        {
            var part = contrasts.At(all, block.Effects);
            if (part.IsZero)
            {
                continue;
            }

            Parts[index] = part;
            foreach (var (basis, target) in bases.Zip(Bases))
            {
                target.AddAt(all, block.Units, part.Times(basis[index]), 1);
            }
        }
    }

    public int Count { get; }

    /// <summary>The columns of each block; null where all are zero.</summary>
    public Matrix?[] Parts { get; }

    /// <summary>Contrasts times each basis.</summary>
    public Matrix[] Bases { get; }
}
