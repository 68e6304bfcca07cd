using LabPipeline.Science.Statistics.Comparisons;

namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>
/// Adjusted (least-squares) means of a term. Each is the model's prediction averaged with equal weights over the levels of
/// all other factors, so a missing plot does not favour the treatment that lost it. Searle, Speed and Milliken 1980 (from memory).
/// </summary>
public sealed class AdjustedMeans
{
    private readonly double[][] _weights;
    private readonly Func<double[], string, LinearEstimate> _estimate;

    private readonly Func<IReadOnlyList<double[]>, Func<int, int, PairPrecision>>? _pairs;

    /// <param name="term">The term.</param>
    /// <param name="cells">Its means.</param>
    /// <param name="weights">Weights of the model's columns behind each.</param>
    /// <param name="estimate">Estimates one combination.</param>
    /// <param name="pairs">Finds the precision of all differences between combinations at once, where that is cheaper than one by one.</param>
    internal AdjustedMeans(Term term, IReadOnlyList<AdjustedMean> cells, double[][] weights, Func<double[], string, LinearEstimate> estimate,
        Func<IReadOnlyList<double[]>, Func<int, int, PairPrecision>>? pairs = null)
    {
        _pairs = pairs;
        Term = term;
        Cells = cells;
        _weights = weights;
        _estimate = estimate;
    }

    public Term Term { get; }

    /// <summary>Cells in the order of the levels, the last factor changing fastest.</summary>
    public IReadOnlyList<AdjustedMean> Cells { get; }

    /// <summary>The cell of a label ("A" or "A:N0").</summary>
    /// <exception cref="KeyNotFoundException">No such label.</exception>
    public AdjustedMean Find(string label) => Cells[IndexOf(label)];

    /// <summary>First minus second with its SED and degrees of freedom.</summary>
    /// <exception cref="NotEstimableException">The difference cannot be estimated from the data; the message says why.</exception>
    public LinearEstimate Difference(string first, string second) => Difference(IndexOf(first), IndexOf(second));

    /// <inheritdoc cref="Difference(string, string)"/>
    public LinearEstimate Difference(int first, int second) =>
        _estimate([.. _weights[first].Zip(_weights[second], (a, b) => a - b)], $"{Cells[first].Label} - {Cells[second].Label}");

    /// <summary>The linear combination of the cell means with the given coefficients, as for a planned or trend contrast.</summary>
    /// <param name="coefficients">One finite number a cell, in the order of <see cref="Cells"/>.</param>
    /// <exception cref="ArgumentException">Another number of coefficients, or one that is not finite.</exception>
    /// <exception cref="NotEstimableException">The combination cannot be estimated from the data.</exception>
    public LinearEstimate Contrast(IReadOnlyList<double> coefficients)
    {
        ArgumentNullException.ThrowIfNull(coefficients);
        if (coefficients.Count != Cells.Count || !coefficients.All(double.IsFinite))
        {
            throw new ArgumentException($"Found {coefficients.Count} coefficient(s); expected {Cells.Count} finite numbers, one for each mean of {Term}.", nameof(coefficients));
        }

        var combined = new double[_weights[0].Length];
        for (var cell = 0; cell < _weights.Length; cell++)
        {
            VectorKernel.AddScaled(combined, coefficients[cell], _weights[cell]);
        }

        return _estimate(combined, $"the contrast of {Term}");
    }

    /// <summary>
    /// The means that can be estimated, each pair with its own SED and df, for tests between means and letters. Means without
    /// an estimate are left out; <see cref="Cells"/> says why.
    /// </summary>
    /// <exception cref="ArgumentException">Fewer than two means can be estimated.</exception>
    /// <exception cref="NotEstimableException">A pair has no standard error, or one of zero.</exception>
    public ComparedMeans ForComparison()
    {
        int[] estimable = [.. Enumerable.Range(0, Cells.Count).Where(index => Cells[index].Value is not null)];
        return new ComparedMeans(
            [.. estimable.Select(index => new MeanEstimate(Cells[index].Label, Cells[index].Value!.Value, Cells[index].Count))],
            _pairs?.Invoke([.. estimable.Select(index => _weights[index])]) ?? ((first, second) => PrecisionOf(Difference(estimable[first], estimable[second]))));
    }

    private static PairPrecision PrecisionOf(LinearEstimate difference) => new(difference.StandardError, difference.Df);

    private int IndexOf(string label)
    {
        for (var index = 0; index < Cells.Count; index++)
        {
            if (Cells[index].Label == label)
            {
                return index;
            }
        }

        throw new KeyNotFoundException($"Found no mean '{label}' of {Term}; there are {string.Join(", ", Cells.Select(cell => cell.Label))}.");
    }
}
