using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A fitted <see cref="LinearModel"/>.</summary>
public sealed class LinearFit
{
    private readonly ModelData _data;
    private readonly ModelMatrix _design;
    private readonly double[][] _columns;
    private readonly LeastSquares _fit;
    private readonly double[] _solution;

    internal LinearFit(ModelData data, ModelMatrix design)
    {
        _data = data;
        _design = design;
        // Subtracting the first value is exact or nearly so; the mean of what is left is then small beside the spread.
        var first = data.Response[0];
        GrandMean = first + data.Response.Average(value => value - first);
        var centred = data.Response.Select(value => value - first).ToArray();
        var shift = centred.Average();
        _columns = design.Columns;
        _fit = new LeastSquares(_columns, design.TermOf, [.. centred.Select(value => value - shift)]);
        _solution = _fit.Qr.SolveTriangle(_fit.Effects);
        Residuals = ResidualsOf(_fit);
        Leverages = LeveragesOf(_fit.Qr);
    }

    /// <summary>Mean of the response as observed.</summary>
    public double GrandMean { get; }

    public int ResidualDf => _fit.ResidualDf;

    /// <summary>Sum of squared residuals, squared units of the response.</summary>
    public double ResidualSumOfSquares => _fit.ResidualSumOfSquares;

    /// <summary>ResidualSumOfSquares / ResidualDf; its root is the standard deviation of one row.</summary>
    /// <exception cref="NotEstimableException">No residual degrees of freedom.</exception>
    public double ResidualMeanSquare => ResidualDf > 0
        ? _fit.ResidualMeanSquare
        : throw new NotEstimableException("The residual mean square", _fit.WhyNoResidual);

    /// <summary>False where nothing is left to test against: no degrees of freedom, or values that agree exactly with the model.</summary>
    public bool HasResidual => _fit.HasResidual;

    /// <summary>100 * sqrt(ResidualMeanSquare) / GrandMean, in percent.</summary>
    /// <exception cref="NotEstimableException">The grand mean is not above zero (as on a log scale), or no residual degrees of freedom.</exception>
    public double CoefficientOfVariation => GrandMean > 0
        ? 100 * Math.Sqrt(ResidualMeanSquare) / GrandMean
        : throw new NotEstimableException("The coefficient of variation", "the grand mean is not above zero");

    /// <summary>Observed minus fitted, in the order of the rows.</summary>
    public IReadOnlyList<double> Residuals { get; }

    public IReadOnlyList<double> Fitted => [.. _data.Response.Zip(Residuals, (value, residual) => value - residual)];

    /// <summary>Diagonal of X(X'X)^-1X': 1 means that a row determines its own fitted value.</summary>
    public IReadOnlyList<double> Leverages { get; }

    /// <summary>
    /// Residuals divided by their standard error from all other rows: t on ResidualDf - 1 degrees of freedom, the outlier test of
    /// a single suspected plot. Null where a row determines its own fitted value or nothing is left. Cook and Weisberg 1982 (from memory).
    /// </summary>
    public IReadOnlyList<double?> StudentizedResiduals => [.. Residuals.Select((residual, row) => Studentized(residual, 1 - Leverages[row]))];

    /// <summary>Every column's coefficient with its standard error, for regressions.</summary>
    public IReadOnlyList<Coefficient> Coefficients => [.. Enumerable.Range(0, _columns.Length).Select(column =>
        new Coefficient(_design.ColumnName(column), _fit.Qr.Aliased.Contains(column) ? null : Estimate(Unit(column), _design.ColumnName(column))))];

    /// <summary>Terms that lost degrees of freedom to terms before them or to empty cells.</summary>
    public IReadOnlyList<NotEstimableTerm> NotEstimable => [.. _fit.Qr.Aliased.GroupBy(column => _design.TermOf[column]).Select(group =>
        new NotEstimableTerm(_design.Terms[group.Key].Name, group.Count(),
            $"{group.Count()} of its {_design.TermOf.Count(term => term == group.Key)} df is confounded with the terms before it or falls in empty cells"))];

    /// <summary>The analysis of variance; every term is tested against the residual.</summary>
    /// <param name="kind">For <see cref="SumsOfSquares.TypeThree"/>, terms related to an aliased one are listed as not estimable.</param>
    public AnovaTable Anova(SumsOfSquares kind)
    {
        var lost = kind == SumsOfSquares.TypeThree ? LostToEmptyCells() : [];
        var rows = Enumerable.Range(0, _design.Terms.Count)
            .Where(term => lost.All(entry => entry.Term != _design.Terms[term].Name))
            .Select(term => Row(term, kind))
            .Where(row => row.Df > 0)
            .Append(new AnovaRow { Stratum = "", Term = AnovaRow.Residual, Df = ResidualDf, SumOfSquares = ResidualSumOfSquares });
        return new AnovaTable($"Least squares, {Describe(kind)}, one error", [.. rows], kind == SumsOfSquares.TypeThree ? lost : NotEstimable);
    }

    /// <summary>Adjusted means of a factor or an interaction cell, with standard errors from the residual.</summary>
    /// <exception cref="ArgumentException">The term names something that is not a factor of the data.</exception>
    public AdjustedMeans Means(params IReadOnlyList<string> factors) =>
        MeanCells.Build(_data, Term.Of(factors), _design, Estimate, HasResidual ? null : Value);

    /// <summary>The mean expected in a cell whose levels are named for some or all factors, whether or not it was observed.</summary>
    /// <param name="levels">Factor name to level; factors left out are averaged with equal weights.</param>
    /// <exception cref="NotEstimableException">The cell cannot be reached from the cells observed.</exception>
    public LinearEstimate Predict(IReadOnlyDictionary<string, string> levels)
    {
        ArgumentNullException.ThrowIfNull(levels);
        var codes = levels.ToDictionary(pair => pair.Key, pair => Factor.Of(pair.Key, _data.FactorNamed(pair.Key).Levels, [pair.Value]).Codes[0]);
        return Estimate(_design.CellRow(codes), string.Join(", ", levels.Select(pair => $"{pair.Key} {pair.Value}")));
    }

    internal static string Describe(SumsOfSquares kind) => kind switch
    {
        SumsOfSquares.Sequential => "sequential (type I) sums of squares",
        SumsOfSquares.TypeTwo => "type II sums of squares",
        _ => "marginal (type III) sums of squares",
    };

    private LinearEstimate Estimate(double[] weights, string what)
    {
        var estimate = Value(weights, what);
        if (!HasResidual)
        {
            throw new NotEstimableException($"The standard error of {what}", _fit.WhyNoResidual);
        }

        var direction = _fit.Qr.SolveTransposed(_fit.Qr.Select(weights));
        var variance = VectorKernel.Dot(direction, direction) * ResidualMeanSquare;
        return LinearEstimate.FromParts(estimate, [new ErrorPart(AnovaRow.Residual, variance, ResidualDf)]);
    }

    private double Value(double[] weights, string what) => _fit.Qr.IsEstimable(weights)
        ? VectorKernel.Dot(_fit.Qr.Select(weights), _solution) + (weights[0] * GrandMean)
        : throw new NotEstimableException(what, "it is confounded with other terms of the model or falls in an empty cell");

    private AnovaRow Row(int term, SumsOfSquares kind)
    {
        var terms = _design.Terms;
        var (df, sum) = kind switch
        {
            SumsOfSquares.Sequential => _fit.Sequential(term),
            SumsOfSquares.TypeTwo => _fit.After(term, other => !terms[other].Contains(terms[term])),
            _ => _fit.After(term, _ => true),
        };
        var row = new AnovaRow { Stratum = "", Term = terms[term].Name, Df = df, SumOfSquares = sum };
        return df == 0 ? row : Tested(row, _fit, AnovaRow.Residual);
    }

    internal static AnovaRow Tested(AnovaRow row, LeastSquares error, string against)
    {
        if (!error.HasResidual)
        {
            return row with { NotTested = error.WhyNoResidual };
        }

        var f = row.MeanSquare!.Value / error.ResidualMeanSquare;
        return row with { F = f, DenominatorDf = error.ResidualDf, P = FDistribution.Upper(f, row.Df, error.ResidualDf), TestedAgainst = against };
    }

    private List<NotEstimableTerm> LostToEmptyCells()
    {
        var aliased = _fit.Qr.Aliased.Select(column => _design.Terms[_design.TermOf[column]]).Distinct().ToArray();
        return [.. _design.Terms.Select((term, index) => (term, index))
            .Where(pair => aliased.Any(other => other.Contains(pair.term) || pair.term.Contains(other)))
            .Select(pair => new NotEstimableTerm(pair.term.Name, _design.TermOf.Count(term => term == pair.index),
                $"type III needs every cell, and {string.Join(", ", aliased.Select(other => other.Name))} has empty or confounded ones"))];
    }

    private double? Studentized(double residual, double room)
    {
        var others = ResidualSumOfSquares - (residual * residual / room);
        return room > 1e-10 && ResidualDf > 1 && others > 0 ? residual / Math.Sqrt(others / (ResidualDf - 1) * room) : null;
    }

    private double[] Unit(int column)
    {
        var weights = new double[_columns.Length];
        weights[column] = 1;
        return weights;
    }

    private static double[] ResidualsOf(LeastSquares fit)
    {
        var residuals = (double[])fit.Effects.Clone();
        Array.Clear(residuals, 0, fit.Qr.Rank);
        fit.Qr.Apply(residuals);
        return residuals;
    }

    private static double[] LeveragesOf(HouseholderQr qr)
    {
        var leverages = new double[qr.Rows];
        for (var index = 0; index < qr.Rank; index++)
        {
            var basis = new double[qr.Rows];
            basis[index] = 1;
            qr.Apply(basis);
            for (var row = 0; row < basis.Length; row++)
            {
                leverages[row] += basis[row] * basis[row];
            }
        }

        return leverages;
    }
}
