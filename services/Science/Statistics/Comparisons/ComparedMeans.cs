using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>A set of means with the precision of every difference between them: what any model hands to the comparisons.</summary>
public sealed class ComparedMeans
{
    /// <summary>Df of like pairs in a mixed model agree up to rounding; beyond these decimals they count as one number.</summary>
    internal const int DfDecimals = 8;

    private readonly MeanEstimate[] _means;
    private readonly PairPrecision[,] _precision;

    /// <param name="means">At least two, with different labels and finite means.</param>
    /// <param name="precision">SED and df of the difference between the means at two positions, first below second.</param>
    /// <exception cref="ArgumentException">Fewer than two means, a repeated label, a value outside its range.</exception>
    /// <exception cref="NotEstimableException">A standard error is 0.</exception>
    public ComparedMeans(IReadOnlyList<MeanEstimate> means, Func<int, int, PairPrecision> precision)
    {
        ArgumentNullException.ThrowIfNull(means);
        ArgumentNullException.ThrowIfNull(precision);
        if (means.Count < 2)
        {
            throw new ArgumentException(Sample.Text($"Found {means.Count} means; at least 2 are needed to compare."), nameof(means));
        }

        _means = [.. means];
        Sample.Check([.. _means.Select(mean => mean.Mean)], 2, "The means");
        var repeated = _means.GroupBy(mean => mean.Label).FirstOrDefault(same => same.Count() > 1 || string.IsNullOrWhiteSpace(same.Key));
        if (repeated is not null)
        {
            throw new ArgumentException($"The label '{repeated.Key}' is empty or repeated; every mean needs its own.", nameof(means));
        }

        foreach (var mean in _means)
        {
            Require.AtLeast(mean.N, 1, $"The number of plots behind '{mean.Label}'", nameof(means));
        }

        _precision = new PairPrecision[_means.Length, _means.Length];
        for (var i = 0; i < _means.Length; i++)
        {
            for (var j = i + 1; j < _means.Length; j++)
            {
                _precision[i, j] = _precision[j, i] = Checked(precision(i, j), _means[i].Label, _means[j].Label);
            }
        }
    }

    /// <summary>Number of means.</summary>
    public int Count => _means.Length;

    /// <summary>The means in the order given.</summary>
    public IReadOnlyList<MeanEstimate> Means => _means;

    /// <summary>Independent means with one error term: SED = √[s² (1/nᵢ + 1/nⱼ)].</summary>
    /// <param name="means">At least two, with different labels and finite means.</param>
    /// <param name="errorMeanSquare">s², in the unit of the response squared, above 0.</param>
    /// <param name="errorDf">Its degrees of freedom.</param>
    /// <exception cref="ArgumentException">Fewer than two means, a repeated label, a value outside its range.</exception>
    /// <exception cref="NotEstimableException">The error mean square is 0.</exception>
    public static ComparedMeans FromErrorMeanSquare(IReadOnlyList<MeanEstimate> means, double errorMeanSquare, double errorDf) =>
        new(means, (i, j) => new PairPrecision(Math.Sqrt(errorMeanSquare * ((1.0 / means[i].N) + (1.0 / means[j].N))), errorDf));

    /// <summary>SED and df of the difference between the means at two different positions.</summary>
    public PairPrecision Precision(int i, int j) => i != j
        ? _precision[i, j]
        : throw new ArgumentException(Sample.Text($"Position {i} was given twice; a difference needs two means."), nameof(j));

    /// <summary>Mean at the first position less mean at the second, in the unit of the response.</summary>
    public double Difference(int i, int j) => _means[i].Mean - _means[j].Mean;

    /// <summary>Position of the mean with this label.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public int IndexOf(string label)
    {
        var index = Array.FindIndex(_means, mean => mean.Label == label);
        return index >= 0
            ? index
            : throw new ArgumentException($"No mean is called '{label}'; there are {string.Join(", ", _means.Select(mean => mean.Label))}.", nameof(label));
    }

    /// <summary>The one df of all pairs among these positions.</summary>
    internal double CommonDf(IReadOnlyList<int> positions, string what)
    {
        var all = positions.SelectMany((i, place) => positions.Skip(place + 1).Select(j => Math.Round(_precision[i, j].Df, DfDecimals))).Distinct().ToArray();
        return all.Length == 1
            ? all[0]
            : throw new NotEstimableException(what, Sample.Text($"the pairs have different degrees of freedom, {all.Min()} to {all.Max()}; compare within one stratum or give the df"));
    }

    private static PairPrecision Checked(PairPrecision precision, string first, string second)
    {
        if (precision.Sed == 0)
        {
            throw new NotEstimableException($"The comparison of '{first}' and '{second}'", "its standard error is 0: the replicates agree exactly");
        }

        if (!(precision.Sed > 0) || double.IsInfinity(precision.Sed) || !(precision.Df > 0))
        {
            throw new ArgumentException(Sample.Text($"The difference of '{first}' and '{second}' has standard error {precision.Sed} on {precision.Df} degrees of freedom; both must be above 0 and the first finite."), nameof(precision));
        }

        return precision;
    }
}
