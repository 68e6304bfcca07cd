using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The columns of fixed effects in which the likelihood is searched. Where the effects are as many as the different rows of X (every
/// combination has its own mean) they are those combinations, one column each: the same space, but a plot touches as many columns as it
/// has pulls and no more. Otherwise they are the estimable columns of X.
/// </summary>
internal sealed class SearchColumns
{
    private readonly HouseholderQr _qr;
    private readonly double[][] _rows;
    private readonly int[]? _cells;

    public SearchColumns(ModelMatrix effects, HouseholderQr qr)
    {
        _qr = qr;
        _rows = [.. Enumerable.Range(0, qr.Rows).Select(row => qr.Select(effects.Values.Row(row)))];
        var different = new List<double[]>();
        int[] cells = [.. _rows.Select(row => PlaceOf(row, different))];
        if (different.Count == qr.Rank)
        {
            var change = Matrix.FromRows(different, qr.Rank);
            // Null only where the combinations are nearly dependent; X then stays as it is.
            var square = Cholesky.TryFactor(change.TransposedTimes(change));
            _cells = square is null ? null : cells;
            LogChange = square?.LogDeterminant ?? 0;
        }
    }

    /// <summary>What log |X'V^-1X| has more than the log determinant in these columns.</summary>
    public double LogChange { get; }

    public double[] Row(int row)
    {
        if (_cells is null)
        {
            return _rows[row];
        }

        var unit = new double[_qr.Rank];
        unit[_cells[row]] = 1;
        return unit;
    }

    /// <summary>A solution in these columns as coefficients of the estimable columns of X.</summary>
    public double[] Coefficients(double[] solution)
    {
        if (_cells is null)
        {
            return solution;
        }

        double[] fitted = [.. _cells.Select(cell => solution[cell])];
        _qr.ApplyTransposed(fitted);
        return _qr.SolveTriangle(fitted);
    }

    private static int PlaceOf(double[] row, List<double[]> different)
    {
        var place = different.FindIndex(other => other.AsSpan().SequenceEqual(row));
        if (place < 0)
        {
            different.Add(row);
        }

        return place < 0 ? different.Count - 1 : place;
    }
}
