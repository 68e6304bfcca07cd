using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Repeatability;

/// <summary>Critical range factors: CR(n) = f(n) x s_r, exceeded by the range of n results only one time in twenty.</summary>
public static class CriticalRange
{
    // From memory; every value is the 0.95 quantile of the range of n standard normals rounded to one decimal.
    private static readonly decimal[] Published = [2.8m, 3.3m, 3.6m, 3.9m, 4.0m, 4.2m, 4.3m, 4.4m, 4.5m, 4.6m, 4.6m, 4.7m, 4.7m, 4.8m, 4.8m, 4.9m, 4.9m, 5.0m, 5.0m];

    /// <summary>f(n) as published, one decimal, for the procedure's own arithmetic.</summary>
    /// <param name="results">Number of results n, 2 to 20.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the table.</exception>
    /// <remarks>Source: ISO 5725-6:1994, table 1 (from memory).</remarks>
    public static decimal PublishedFactor(int results)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(results, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(results, Published.Length + 1);
        return Published[results - 2];
    }

    /// <summary>f(n) unrounded: the quantile of the range of n standard normals.</summary>
    /// <param name="results">Number of results n, 2 to 1000.</param>
    /// <param name="probability">Share of good samples that stay within, strictly between 0 and 1; 0.95 in ISO 5725-6.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    /// <remarks>The studentised range with infinitely many degrees of freedom: s_r is taken as known.</remarks>
    public static double Factor(int results, double probability = 0.95) => StudentizedRange.Quantile(probability, results, double.PositiveInfinity);
}
