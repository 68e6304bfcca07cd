using System.Globalization;

namespace LabPipeline.Science.Tests.Statistics;

/// <summary>How far a computed number agrees with a check value.</summary>
internal static class Agreement
{
    /// <summary>Log relative error: about the number of correct leading digits, at most 16.</summary>
    internal static double Digits(double expected, double found)
    {
        var error = Math.Abs(expected == 0 ? found : (found - expected) / expected);
        return error == 0 ? 16 : Math.Min(16, -Math.Log10(error));
    }

    internal static void Relative(double expected, double found, double tolerance, object? where = null) => Assert.True(
        Math.Abs(found - expected) <= tolerance * Math.Abs(expected),
        string.Create(CultureInfo.InvariantCulture, $"{where}: expected {expected:R} within relative {tolerance}, found {found:R}."));

    internal static void Absolute(double expected, double found, double tolerance, object? where = null) => Assert.True(
        Math.Abs(found - expected) <= tolerance,
        string.Create(CultureInfo.InvariantCulture, $"{where}: expected {expected:R} within {tolerance}, found {found:R}."));
}
