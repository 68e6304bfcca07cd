namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>
/// Householder QR with limited pivoting: columns keep their order, and a column that adds nothing to those before it
/// (what is left of it is below <see cref="Tolerance"/> times its length) is set aside as aliased. The order matters,
/// because sequential sums of squares are read off Q'y term by term.
/// Golub and Van Loan, Matrix Computations, chapter 5 (from memory).
/// </summary>
internal sealed class HouseholderQr
{
    public const double Tolerance = 1e-7;

    private readonly List<double[]> _reflectors = [];
    private readonly List<double[]> _triangle = [];
    private readonly List<int> _kept = [];
    private readonly List<int> _aliased = [];
    private readonly List<double[]> _aliasHeads = [];

    private HouseholderQr(int rows) => Rows = rows;

    public int Rows { get; }

    public int Rank => _kept.Count;

    /// <summary>Source column behind each column of Q.</summary>
    public IReadOnlyList<int> Kept => _kept;

    public IReadOnlyList<int> Aliased => _aliased;

    /// <summary>Log of the absolute determinant of R.</summary>
    public double LogDeterminant => _triangle.Index().Sum(column => Math.Log(Math.Abs(column.Item[column.Index])));

    /// <param name="columns">Columns in the order in which they may claim variation.</param>
    /// <param name="lengths">What a column's remainder is compared with; null means its own length.</param>
    public static HouseholderQr Factor(IReadOnlyList<double[]> columns, IReadOnlyList<double>? lengths = null)
    {
        var qr = new HouseholderQr(columns.Count == 0 ? 0 : columns[0].Length);
        for (var index = 0; index < columns.Count; index++)
        {
            var work = (double[])columns[index].Clone();
            var length = lengths?[index] ?? Math.Sqrt(VectorKernel.Dot(work, work));
            qr.ApplyTransposed(work);
            qr.Take(index, work, length);
        }

        return qr;
    }

    /// <summary>v := Q'v.</summary>
    public void ApplyTransposed(double[] vector)
    {
        for (var index = 0; index < _reflectors.Count; index++)
        {
            Reflect(index, vector);
        }
    }

    /// <summary>v := Qv.</summary>
    public void Apply(double[] vector)
    {
        for (var index = _reflectors.Count - 1; index >= 0; index--)
        {
            Reflect(index, vector);
        }
    }

    /// <summary>Solves R x = b for the kept columns.</summary>
    public double[] SolveTriangle(ReadOnlySpan<double> right)
    {
        var solution = right[..Rank].ToArray();
        for (var column = Rank - 1; column >= 0; column--)
        {
            solution[column] /= _triangle[column][column];
            VectorKernel.AddScaled(solution.AsSpan(0, column), -solution[column], _triangle[column].AsSpan(0, column));
        }

        return solution;
    }

    /// <summary>Solves R'x = b for the kept columns.</summary>
    public double[] SolveTransposed(ReadOnlySpan<double> right)
    {
        var solution = new double[Rank];
        for (var column = 0; column < Rank; column++)
        {
            var known = VectorKernel.Dot(_triangle[column].AsSpan(0, column), solution.AsSpan(0, column));
            solution[column] = (right[column] - known) / _triangle[column][column];
        }

        return solution;
    }

    /// <summary>Whether a weight vector over all source columns lies in the row space, so that its combination is estimable.</summary>
    public bool IsEstimable(ReadOnlySpan<double> weights)
    {
        var kept = Select(weights);
        var scale = 1.0;
        foreach (var weight in weights)
        {
            scale = Math.Max(scale, Math.Abs(weight));
        }

        for (var alias = 0; alias < _aliased.Count; alias++)
        {
            var implied = VectorKernel.Dot(kept, SolveTriangle(_aliasHeads[alias]));
            if (Math.Abs(implied - weights[_aliased[alias]]) > 1e-6 * scale)
            {
                return false;
            }
        }

        return true;
    }

    public double[] Select(ReadOnlySpan<double> weights)
    {
        var kept = new double[Rank];
        for (var index = 0; index < Rank; index++)
        {
            kept[index] = weights[_kept[index]];
        }

        return kept;
    }

    private void Take(int index, double[] work, double length)
    {
        var rank = Rank;
        var tail = work.AsSpan(rank);
        var norm = Math.Sqrt(VectorKernel.Dot(tail, tail));
        if (norm <= Tolerance * length || norm == 0)
        {
            _aliased.Add(index);
            var head = new double[Math.Max(Rows, work.Length)];
            work.AsSpan(0, rank).CopyTo(head);
            _aliasHeads.Add(head);
            return;
        }

        var diagonal = tail[0] > 0 ? -norm : norm;
        var reflector = tail.ToArray();
        reflector[0] -= diagonal;
        var reflectorNorm = Math.Sqrt(VectorKernel.Dot(reflector, reflector));
        for (var row = 0; row < reflector.Length; row++)
        {
            reflector[row] /= reflectorNorm;
        }

        var column = work.AsSpan(0, rank + 1).ToArray();
        column[rank] = diagonal;
        _reflectors.Add(reflector);
        _triangle.Add(column);
        _kept.Add(index);
    }

    private void Reflect(int index, double[] vector)
    {
        var tail = vector.AsSpan(index);
        VectorKernel.AddScaled(tail, -2 * VectorKernel.Dot(_reflectors[index], tail), _reflectors[index]);
    }
}
