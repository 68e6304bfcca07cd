using System.Runtime.InteropServices;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>
/// The columns of fixed effects in which the likelihood is searched. Where the effects are as many as the different rows of X (every
/// combination has its own mean) they are those combinations, one column each: the same space, but a plot touches as many columns as it
/// has pulls and no more. Otherwise they are the estimable columns of X.
/// </summary>
internal sealed class SearchColumns
{
    private readonly ModelMatrix _effects;
    private readonly int[]? _cells;
    private readonly Lazy<Matrix> _inverse;

    public SearchColumns(ModelMatrix effects)
    {
        _effects = effects;
        var rows = Enumerable.Range(0, effects.Values.Rows).ToArray();
        var places = new Dictionary<int, int>(new SameRow(effects.Values));
        int[] cells = [.. rows.Select(row => Place(places, row))];
        int[] different = [.. places.OrderBy(pair => pair.Value).Select(pair => pair.Key)];
        Qr = HouseholderQr.Factor(effects.Values.At(different, [.. Enumerable.Range(0, effects.Values.Columns)]).Transposed().AllRows());
        if (Qr.Rank == different.Length)
        {
            _cells = cells;
            LogChange = 2 * Qr.LogDeterminant;
        }
        else
        {
            Qr = HouseholderQr.Factor(effects.Columns);
        }

        // Of the matrix that turns coefficients into the means of combinations.
        _inverse = new Lazy<Matrix>(() => SparseInverse.Of(effects.Values.At(different, [.. Qr.Kept])));
    }

    /// <summary>Tells which columns of X can be estimated, and keeps those.</summary>
    public HouseholderQr Qr { get; }

    /// <summary>What log |X'V^-1X| has more than the log determinant in these columns.</summary>
    public double LogChange { get; }

    /// <summary>The columns of these that a row of the data touches, with their values.</summary>
    public IEnumerable<(int Column, double Value)> Entries(int row) => _cells is not null
        ? [(_cells[row], 1)]
        : Qr.Select(_effects.Values.Row(row)).Index().Where(entry => entry.Item != 0).Select(entry => (entry.Index, entry.Item));

    /// <summary>Weights on the estimable columns of X as weights on these.</summary>
    public double[] Weights(ReadOnlySpan<double> weights)
    {
        if (_cells is null)
        {
            return weights.ToArray();
        }

        var turned = new double[Qr.Rank];
        for (var column = 0; column < weights.Length; column++)
        {
            if (weights[column] != 0)
            {
                VectorKernel.AddScaled(turned, weights[column], _inverse.Value.Row(column));
            }
        }

        return turned;
    }

    /// <summary>A solution in these columns as coefficients of the estimable columns of X.</summary>
    public double[] Coefficients(double[] solution)
    {
        if (_cells is null)
        {
            return solution;
        }

        var fitted = (double[])solution.Clone();
        Qr.ApplyTransposed(fitted);
        return Qr.SolveTriangle(fitted);
    }

    /// <summary>Least squares coefficients of the estimable columns of X, and residuals.</summary>
    public (double[] Coefficients, double[] Residuals) Ordinary(IReadOnlyList<double> response)
    {
        var mean = response[0] + response.Average(value => value - response[0]);
        double[] residuals = [.. response.Select(value => value - mean)];
        double[] coefficients;
        if (_cells is null)
        {
            Qr.ApplyTransposed(residuals);
            coefficients = Qr.SolveTriangle(residuals);
            Array.Clear(residuals, 0, Qr.Rank);
            Qr.Apply(residuals);
        }
        else
        {
            var means = CellMeans(residuals);
            coefficients = Coefficients(means);
            residuals = [.. residuals.Select((value, row) => value - means[_cells[row]])];
        }

        coefficients[0] += mean;
        return (coefficients, residuals);
    }

    private double[] CellMeans(double[] values)
    {
        var (sums, counts) = (new double[Qr.Rank], new int[Qr.Rank]);
        for (var row = 0; row < values.Length; row++)
        {
            sums[_cells![row]] += values[row];
            counts[_cells[row]]++;
        }

        return [.. sums.Zip(counts, (sum, count) => sum / count)];
    }

    private static int Place(Dictionary<int, int> places, int row)
    {
        places.TryAdd(row, places.Count);
        return places[row];
    }

    /// <summary>Row numbers whose rows hold the same values.</summary>
    private sealed class SameRow(Matrix values) : IEqualityComparer<int>
    {
        public bool Equals(int x, int y) => values.Row(x).SequenceEqual(values.Row(y));

        public int GetHashCode(int obj)
        {
            var hash = new HashCode();
            hash.AddBytes(MemoryMarshal.AsBytes(values.Row(obj)));
            return hash.ToHashCode();
        }
    }
}
