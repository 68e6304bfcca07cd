namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>Least squares of one vector on columns that belong to terms; sums of squares are read off Q'y.</summary>
internal sealed class LeastSquares
{
    /// <summary>A residual this small beside the total is rounding, not error.</summary>
    private const double NoResidual = 1e-24;

    private readonly double[][] _columns;
    private readonly IReadOnlyList<int> _termOf;
    private readonly double[] _response;
    private readonly IReadOnlyList<double>? _lengths;

    public LeastSquares(double[][] columns, IReadOnlyList<int> termOf, double[] response, IReadOnlyList<double>? lengths = null)
    {
        _columns = columns;
        _termOf = termOf;
        _response = response;
        _lengths = lengths;
        Qr = HouseholderQr.Factor(columns, lengths);
        Effects = (double[])response.Clone();
        Qr.ApplyTransposed(Effects);
        var tail = Effects.AsSpan(Qr.Rank);
        ResidualSumOfSquares = VectorKernel.Dot(tail, tail);
        ResidualDf = response.Length - Qr.Rank;
        var total = VectorKernel.Dot(response, response);
        HasResidual = ResidualDf > 0 && ResidualSumOfSquares > NoResidual * total;
    }

    public HouseholderQr Qr { get; }

    public double[] Effects { get; }

    public double ResidualSumOfSquares { get; }

    public int ResidualDf { get; }

    /// <summary>False where nothing is left to test against: no degrees of freedom, or a residual of rounding only.</summary>
    public bool HasResidual { get; }

    public double ResidualMeanSquare => ResidualSumOfSquares / ResidualDf;

    public string WhyNoResidual => ResidualDf == 0
        ? "no residual degrees of freedom are left to test against"
        : "the residual mean square is zero: the values agree exactly with the model";

    /// <summary>Degrees of freedom and sum of squares of a term after those before it.</summary>
    public (int Df, double SumOfSquares) Sequential(int term)
    {
        var (df, sum) = (0, 0.0);
        for (var index = 0; index < Qr.Rank; index++)
        {
            if (_termOf[Qr.Kept[index]] == term)
            {
                df++;
                sum += Effects[index] * Effects[index];
            }
        }

        return (df, sum);
    }

    /// <summary>Degrees of freedom and sum of squares of a term after the given other terms (and the intercept).</summary>
    public (int Df, double SumOfSquares) After(int term, Func<int, bool> isBefore)
    {
        var order = Enumerable.Range(0, _columns.Length).Where(column => _termOf[column] < 0 || (_termOf[column] != term && isBefore(_termOf[column])))
            .Concat(Enumerable.Range(0, _columns.Length).Where(column => _termOf[column] == term))
            .ToArray();
        var reordered = new LeastSquares([.. order.Select(column => _columns[column])], [.. order.Select(column => _termOf[column])], _response,
            _lengths is null ? null : [.. order.Select(column => _lengths[column])]);
        return reordered.Sequential(term);
    }
}
