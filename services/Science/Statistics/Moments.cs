namespace LabPipeline.Science.Statistics;

/// <summary>Count, mean and centred sum of squares of one sample.</summary>
/// <remarks>
/// Two passes over data shifted by its first value, sums compensated: the form "sum of squares minus correction" loses
/// every digit when the mean is large beside the spread (NIST StRD, sets SmLs07 to SmLs09).
/// </remarks>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Arithmetic mean, in the unit of the values.</param>
/// <param name="SumOfSquares">Σ(x - mean)², in that unit squared; exactly 0 when all values are equal.</param>
public readonly record struct Moments(int Count, double Mean, double SumOfSquares)
{
    /// <summary>SumOfSquares / (Count - 1).</summary>
    /// <exception cref="NotEstimableException">There is only one value.</exception>
    public double Variance => Count > 1
        ? SumOfSquares / (Count - 1)
        : throw new NotEstimableException("The variance", "there is only 1 value");

    /// <summary>The square root of the variance, in the unit of the values.</summary>
    /// <exception cref="NotEstimableException">There is only one value.</exception>
    public double StandardDeviation => Math.Sqrt(Variance);

    /// <param name="values">At least one value, all finite; NaN is refused, not skipped.</param>
    /// <exception cref="ArgumentException">No values, or one that is not finite.</exception>
    public static Moments Of(IReadOnlyList<double> values)
    {
        Sample.Check(values, 1, "The sample");
        var shift = values[0];
        var sum = new CompensatedSum();
        foreach (var value in values)
        {
            sum.Add(value - shift);
        }

        var mean = sum.Value / values.Count;
        var squares = new CompensatedSum();
        var rest = new CompensatedSum();
        foreach (var value in values)
        {
            var deviation = value - shift - mean;
            squares.Add(deviation * deviation);
            rest.Add(deviation);
        }

        // The deviations add to the rounding error of the mean; taking it out again costs nothing.
        return new Moments(values.Count, shift + mean, Math.Max(0, squares.Value - (rest.Value * rest.Value / values.Count)));
    }
}
