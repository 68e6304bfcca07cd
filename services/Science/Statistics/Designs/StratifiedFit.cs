using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>A fitted <see cref="StratifiedAnova"/>.</summary>
public sealed class StratifiedFit
{
    private readonly ModelData _data;
    private readonly ModelMatrix _design;
    private readonly UnitProjection _units;
    private readonly LeastSquares[] _strata;
    private readonly HouseholderQr _whole;
    private readonly double[] _solution;
    private readonly double _mean;

    internal StratifiedFit(ModelData data, ModelMatrix design, UnitProjection units, SumsOfSquares kind)
    {
        _data = data;
        _design = design;
        _units = units;
        _mean = data.Response[0] + data.Response.Average(value => value - data.Response[0]);
        double[] centred = [.. data.Response.Select(value => value - _mean)];
        var columns = design.Columns;
        _strata = Project(columns, centred);
        _whole = HouseholderQr.Factor(columns);
        var effects = (double[])centred.Clone();
        _whole.ApplyTransposed(effects);
        _solution = _whole.SolveTriangle(effects);
        IsOrthogonal = _strata.Sum(stratum => stratum.Qr.Rank) == _whole.Rank - 1;
        Strata = [.. _strata.Select((stratum, index) => new Stratum(units.Names[index], units.DfOf(index), stratum.ResidualDf, stratum.ResidualSumOfSquares))
            .Where(stratum => stratum.Df > 0)];
        NotEstimable = FindLost();
        Table = BuildTable(kind);
    }

    /// <summary>Mean of the response as observed.</summary>
    public double GrandMean => _mean;

    /// <summary>
    /// Whether least squares is the best estimate whatever the strata's variances: each treatment comparison lies wholly in one stratum.
    /// </summary>
    public bool IsOrthogonal { get; }

    public IReadOnlyList<Stratum> Strata { get; }

    /// <summary>Lines by stratum; each treatment line names the residual it was tested against.</summary>
    public AnovaTable Table { get; }

    /// <summary>Treatment terms that appear in no stratum, or only in part.</summary>
    public IReadOnlyList<NotEstimableTerm> NotEstimable { get; }

    /// <summary>
    /// Means of a treatment term. The means themselves carry no standard error (it would depend on whether blocks are sampled);
    /// differences do, made of the strata they cross with Satterthwaite's df: the four SEDs of a split-plot come out of one rule.
    /// </summary>
    /// <exception cref="NotEstimableException">The design is not orthogonal: use the mixed model.</exception>
    public AdjustedMeans Means(params IReadOnlyList<string> factors) => IsOrthogonal
        ? MeanCells.Build(_data, Term.Of(factors), _design, Difference, Value)
        : throw new NotEstimableException($"Means of {string.Join(":", factors)} by error strata", "plots are missing, so the comparisons spread over several strata; use the mixed model");

    /// <summary>100 * sqrt(residual mean square of a stratum) / grand mean, in percent per row of that stratum.</summary>
    /// <exception cref="NotEstimableException">No residual in the stratum, or a grand mean not above zero.</exception>
    public double CoefficientOfVariation(string stratum)
    {
        var meanSquare = Strata.Single(entry => entry.Name == stratum).ResidualMeanSquare
            ?? throw new NotEstimableException($"The coefficient of variation of {stratum}", "the stratum has no residual degrees of freedom");
        return _mean > 0
            ? 100 * Math.Sqrt(meanSquare) / _mean
            : throw new NotEstimableException($"The coefficient of variation of {stratum}", "the grand mean is not above zero");
    }

    /// <summary>The residual fit of a stratum, for corrected tests of pulls.</summary>
    internal LeastSquares FitOf(string stratum) => _strata[_units.Names.ToList().IndexOf(stratum)];

    private LeastSquares[] Project(double[][] columns, double[] response)
    {
        // The intercept lies in the grand mean alone, so it has no coordinate in any stratum.
        var lengths = columns.Skip(1).Select(column => Math.Sqrt(VectorKernel.Dot(column, column))).ToArray();
        var parts = columns.Skip(1).Select(_units.Split).ToArray();
        var split = _units.Split(response);
        int[] termOf = [.. _design.TermOf.Skip(1)];
        return [.. Enumerable.Range(0, _units.Names.Count).Select(stratum =>
            new LeastSquares([.. parts.Select(part => part[stratum])], termOf, split[stratum], lengths))];
    }

    private AnovaTable BuildTable(SumsOfSquares kind)
    {
        var rows = new List<AnovaRow>();
        for (var stratum = 0; stratum < _strata.Length; stratum++)
        {
            for (var term = 0; term < _design.Terms.Count; term++)
            {
                rows.AddRange(TermRow(stratum, term, kind));
            }

            if (_strata[stratum].ResidualDf > 0)
            {
                rows.Add(new AnovaRow { Stratum = _units.Names[stratum], Term = AnovaRow.Residual, Df = _strata[stratum].ResidualDf, SumOfSquares = _strata[stratum].ResidualSumOfSquares });
            }
        }

        return new AnovaTable($"Error strata {string.Join(", ", _units.Names)}; {LinearFit.Describe(kind)} within each", rows, NotEstimable);
    }

    private IEnumerable<AnovaRow> TermRow(int stratum, int term, SumsOfSquares kind)
    {
        var fit = _strata[stratum];
        if (fit.Sequential(term).Df == 0)
        {
            return [];
        }

        var terms = _design.Terms;
        var (df, sum) = kind switch
        {
            SumsOfSquares.Sequential => fit.Sequential(term),
            SumsOfSquares.TypeTwo => fit.After(term, other => !terms[other].Contains(terms[term])),
            _ => fit.After(term, _ => true),
        };
        var row = new AnovaRow { Stratum = _units.Names[stratum], Term = terms[term].Name, Df = df, SumOfSquares = sum };
        return df == 0 ? [] : [LinearFit.Tested(row, fit, $"{_units.Names[stratum]} residual")];
    }

    private List<NotEstimableTerm> FindLost()
    {
        var lost = new List<NotEstimableTerm>();
        for (var term = 0; term < _design.Terms.Count; term++)
        {
            var columns = _design.TermOf.Count(owner => owner == term);
            var found = _strata.Select((stratum, index) => (Name: _units.Names[index], stratum.Sequential(term).Df)).Where(entry => entry.Df > 0).ToArray();
            if (_whole.Aliased.Any(column => _design.TermOf[column] == term))
            {
                var missing = _whole.Aliased.Count(column => _design.TermOf[column] == term);
                lost.Add(new NotEstimableTerm(_design.Terms[term].Name, missing, $"{missing} of its {columns} df falls in empty cells or is confounded with other treatments"));
            }
            else if (found.Sum(entry => entry.Df) > columns)
            {
                lost.Add(new NotEstimableTerm(_design.Terms[term].Name, 0, $"its information is divided between the strata {string.Join(" and ", found.Select(entry => entry.Name))}; no one line is the whole test"));
            }
        }

        return lost;
    }

    private double Value(double[] weights, string what) => _whole.IsEstimable(weights)
        ? VectorKernel.Dot(_whole.Select(weights), _solution) + (weights[0] * _mean)
        : throw new NotEstimableException(what, "it falls in an empty cell or is confounded with other treatments");

    private LinearEstimate Difference(double[] weights, string what)
    {
        if (Math.Abs(weights[0]) > 1e-9)
        {
            throw new NotEstimableException(what, "only differences have a standard error under error strata: the coefficients must sum to zero");
        }

        var estimate = Value(weights, what);
        var rows = new double[_whole.Rows];
        _whole.SolveTransposed(_whole.Select(weights)).CopyTo(rows, 0);
        _whole.Apply(rows);
        var split = _units.Split(rows);
        var total = VectorKernel.Dot(rows, rows);
        var parts = new List<ErrorPart>();
        for (var stratum = 0; stratum < split.Length; stratum++)
        {
            var share = VectorKernel.Dot(split[stratum], split[stratum]);
            if (share > 1e-12 * total)
            {
                parts.Add(Part(stratum, share, what));
            }
        }

        return LinearEstimate.FromParts(estimate, parts);
    }

    private ErrorPart Part(int stratum, double share, string what) => _strata[stratum].HasResidual
        ? new ErrorPart(_units.Names[stratum], share * _strata[stratum].ResidualMeanSquare, _strata[stratum].ResidualDf)
        : throw new NotEstimableException(what, $"in stratum {_units.Names[stratum]} {_strata[stratum].WhyNoResidual}");
}
