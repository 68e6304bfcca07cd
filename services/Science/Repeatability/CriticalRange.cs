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
}
