namespace LabPipeline.Science.Statistics.Correlation;

/// <summary>A straight line y = Intercept + Slope × x by least squares.</summary>
/// <param name="Slope">Sxy / Sxx, in units of y over units of x.</param>
/// <param name="Intercept">mean of y - Slope × mean of x, in the unit of y.</param>
/// <param name="ResidualStandardDeviation">√[Σ(y - fitted)² / (n - 2)], in the unit of y.</param>
public sealed record SimpleRegression(double Slope, double Intercept, double ResidualStandardDeviation)
{
    /// <param name="x">At least 3 finite values.</param>
    /// <param name="y">As many, in the same order.</param>
    /// <exception cref="ArgumentException">Too few values, unequal counts, or a value that is not finite.</exception>
    /// <exception cref="NotEstimableException">All x are equal, or all y.</exception>
    public static SimpleRegression Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var sums = Products.Of(x, y, 3, "The regression line");
        var slope = sums.Xy / sums.Xx;
        var residual = new CompensatedSum();
        for (var index = 0; index < x.Count; index++)
        {
            var away = y[index] - sums.MeanY - (slope * (x[index] - sums.MeanX));
            residual.Add(away * away);
        }

        return new SimpleRegression(slope, sums.MeanY - (slope * sums.MeanX), Math.Sqrt(residual.Value / (x.Count - 2)));
    }
}
