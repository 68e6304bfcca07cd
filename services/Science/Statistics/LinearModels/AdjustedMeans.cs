namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>
/// Adjusted (least-squares) means of a term. Each is the model's prediction averaged with equal weights over the levels of
/// all other factors, so a missing plot does not favour the treatment that lost it. Searle, Speed and Milliken 1980 (from memory).
/// </summary>
public sealed class AdjustedMeans
{
    private readonly double[][] _weights;
    private readonly Func<double[], string, ContrastEstimate> _estimate;

    internal AdjustedMeans(Term term, IReadOnlyList<AdjustedMean> cells, double[][] weights, Func<double[], string, ContrastEstimate> estimate)
    {
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
    public ContrastEstimate Difference(string first, string second) => Difference(IndexOf(first), IndexOf(second));

    /// <inheritdoc cref="Difference(string, string)"/>
    public ContrastEstimate Difference(int first, int second) =>
        _estimate([.. _weights[first].Zip(_weights[second], (a, b) => a - b)], $"{Cells[first].Label} - {Cells[second].Label}");

    /// <summary>The linear combination of the cell means with the given coefficients, as for a planned or trend contrast.</summary>
    /// <param name="coefficients">One finite number a cell, in the order of <see cref="Cells"/>.</param>
    /// <exception cref="ArgumentException">Another number of coefficients, or one that is not finite.</exception>
    /// <exception cref="NotEstimableException">The combination cannot be estimated from the data.</exception>
    public ContrastEstimate Contrast(IReadOnlyList<double> coefficients)
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
