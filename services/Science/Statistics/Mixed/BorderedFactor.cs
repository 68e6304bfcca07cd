using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// Cholesky factor of the mixed model equations [D B'; B C] whose fixed part D falls into blocks that no plot joins, one for each treatment,
/// and whose border are the random units. Blocks are factored one by one and the border by its Schur complement C - sum B D^-1 B', so the work grows
/// with the number of treatments and not with its cube.
/// </summary>
internal sealed class BorderedFactor
{
    private readonly int _border;
    private readonly IReadOnlyList<int[]> _blocks;
    private readonly Cholesky[] _factors;
    private readonly Matrix[] _carried;
    private readonly Cholesky? _corner;
    private readonly Matrix _cornerInverse;

    private BorderedFactor(int border, IReadOnlyList<int[]> blocks, Cholesky[] factors, Matrix[] carried, Cholesky? corner)
    {
        _border = border;
        _blocks = blocks;
        _factors = factors;
        _carried = carried;
        _corner = corner;
        _cornerInverse = corner is null ? new Matrix(0, 0) : corner.Inverse();
        LogDeterminant = factors.Sum(factor => factor.LogDeterminant) + (corner?.LogDeterminant ?? 0);
    }

    public double LogDeterminant { get; }

    /// <param name="matrix">Symmetric, the border first.</param>
    /// <param name="border">Number of border columns; may be zero.</param>
    /// <param name="blocks">The other columns, each in one block; between blocks the matrix is zero.</param>
    /// <returns>Null where the matrix is not positive definite to working precision.</returns>
    public static BorderedFactor? TryFactor(Matrix matrix, int border, IReadOnlyList<int[]> blocks)
    {
        var edge = Enumerable.Range(0, border).ToArray();
        var corner = Part(matrix, edge, edge);
        var factors = new Cholesky[blocks.Count];
        var carried = new Matrix[blocks.Count];
        for (var block = 0; block < blocks.Count; block++)
        {
            if (Cholesky.TryFactor(Part(matrix, blocks[block], blocks[block])) is not { } factor)
            {
                return null;
            }

            factors[block] = factor;
            // D^-1 B' of the block.
            carried[block] = factor.SolveUpper(factor.SolveLower(Part(matrix, blocks[block], edge)));
            corner.Add(Part(matrix, edge, blocks[block]).Times(carried[block]), -1);
        }

        var last = border == 0 ? null : Cholesky.TryFactor(corner);
        return border > 0 && last is null ? null : new BorderedFactor(border, blocks, factors, carried, last);
    }

    public double[] Solve(double[] right)
    {
        var solution = new double[right.Length];
        var edge = right[.._border];
        for (var block = 0; block < _blocks.Count; block++)
        {
            var taken = _carried[block].TransposedTimes(Matrix.FromRows([.. _blocks[block].Select(column => new[] { right[column] })], 1));
            for (var row = 0; row < _border; row++)
            {
                edge[row] -= taken[row, 0];
            }
        }

        var solved = _corner is null ? [] : _corner.Solve(edge);
        solved.CopyTo(solution, 0);
        for (var block = 0; block < _blocks.Count; block++)
        {
            var part = _factors[block].Solve([.. _blocks[block].Select(column => right[column])]);
            var carried = _border == 0 ? new double[part.Length] : _carried[block].Times(solved);
            for (var place = 0; place < part.Length; place++)
            {
                solution[_blocks[block][place]] = part[place] - carried[place];
            }
        }

        return solution;
    }

    /// <summary>The inverse within the border, within each block, and between the two; elements between different blocks are left at zero.</summary>
    public Matrix InverseWithinBlocks(int size)
    {
        var inverse = new Matrix(size, size);
        for (var row = 0; row < _border; row++)
        {
            _cornerInverse.Row(row).CopyTo(inverse.Row(row));
        }

        for (var block = 0; block < _blocks.Count; block++)
        {
            var columns = _blocks[block];
            var own = _factors[block].Inverse();
            var across = _border == 0 ? null : _carried[block].Times(_cornerInverse);
            if (across is not null)
            {
                own.Add(across.Times(_carried[block].Transposed()), 1);
            }

            for (var row = 0; row < columns.Length; row++)
            {
                for (var column = 0; column < columns.Length; column++)
                {
                    inverse[columns[row], columns[column]] = own[row, column];
                }

                for (var edge = 0; edge < _border; edge++)
                {
                    inverse[columns[row], edge] = inverse[edge, columns[row]] = -across![row, edge];
                }
            }
        }

        return inverse;
    }

    private static Matrix Part(Matrix matrix, int[] rows, int[] columns)
    {
        var part = new Matrix(rows.Length, columns.Length);
        for (var row = 0; row < rows.Length; row++)
        {
            for (var column = 0; column < columns.Length; column++)
            {
                part[row, column] = matrix[rows[row], columns[column]];
            }
        }

        return part;
    }
}
