namespace LabPipeline.Science.Statistics.Correlation;

/// <summary>Centred sums of squares and products of paired values.</summary>
internal readonly record struct Products(double MeanX, double MeanY, double Xx, double Yy, double Xy)
{
    internal double Coefficient => Math.Clamp(Xy / Math.Sqrt(Xx * Yy), -1, 1);

    internal static Products Of(IReadOnlyList<double> x, IReadOnlyList<double> y, int atLeast, string what)
    {
        Sample.CheckPair(x, y, atLeast);
        foreach (var (values, name) in new[] { (x, "x"), (y, "y") })
        {
            if (Sample.AllEqual(values))
            {
                throw new NotEstimableException(what, Sample.Text($"all {values.Count} values of {name} are equal to {values[0]}"));
            }
        }

        var (first, second) = (Moments.Of(x), Moments.Of(y));
        var cross = new CompensatedSum();
        for (var index = 0; index < x.Count; index++)
        {
            cross.Add((x[index] - first.Mean) * (y[index] - second.Mean));
        }

        return new Products(first.Mean, second.Mean, first.SumOfSquares, second.SumOfSquares, cross.Value);
    }
}
