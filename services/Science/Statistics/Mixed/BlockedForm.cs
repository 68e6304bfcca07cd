using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// A symmetric matrix between fixed effects: a square for each block on the diagonal, and products left * weights * right' of bases that have a
/// row an effect and a column a random unit. Never written out whole.
/// </summary>
internal sealed class BlockedForm
{
    private readonly List<(int Left, int Right, Matrix Weights, bool IsMirrored)> _products = [];

    /// <summary>One square a block; null for none.</summary>
    public Matrix[]? Blocks { get; init; }

    /// <summary>Adds left * weights * right'.</summary>
    public BlockedForm With(int left, int right, Matrix weights)
    {
        _products.Add((left, right, weights, false));
        return this;
    }

    /// <summary>Adds left * weights * right' and its mirror image.</summary>
    public BlockedForm WithMirrored(int left, int right, Matrix weights)
    {
        _products.Add((left, right, weights, true));
        return this;
    }

    /// <summary>Contrasts * this * contrasts'.</summary>
    public Matrix Around(ContrastLoadings contrasts)
    {
        var sum = new Matrix(contrasts.Count, contrasts.Count);
        for (var block = 0; block < contrasts.Parts.Length && Blocks is not null; block++)
        {
            var (rows, columns) = contrasts.Parts[block];
            if (rows.Length > 0)
            {
                sum.AddAt(rows, rows, columns.Times(Blocks[block]).Times(columns.Transposed()), 1);
            }
        }

        foreach (var (left, right, weights, isMirrored) in _products)
        {
            var product = contrasts.Bases[left].Times(weights).Times(contrasts.Bases[right].Transposed());
            sum.Add(product, 1);
            if (isMirrored)
            {
                sum.Add(product.Transposed(), 1);
            }
        }

        return sum;
    }
}
