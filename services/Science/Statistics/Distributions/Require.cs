using System.Globalization;
using System.Runtime.CompilerServices;

namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The argument checks shared by the distributions; every message gives what was expected and what was found.</summary>
internal static class Require
{
    internal static void Number(double value, string what, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (double.IsNaN(value))
        {
            throw new ArgumentOutOfRangeException(name, $"{what} must be a number; found NaN.");
        }
    }

    internal static void Finite(double value, string what, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, $"{what} must be a finite number; found {Show(value)}.");
        }
    }

    internal static void Positive(double value, string what, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0) || double.IsInfinity(value))
        {
            throw new ArgumentOutOfRangeException(name, $"{what} must be above 0 and finite; found {Show(value)}.");
        }
    }

    /// <summary>Degrees of freedom of an error term, where infinity means "the error variance is known".</summary>
    internal static void DegreesOfFreedom(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0))
        {
            throw new ArgumentOutOfRangeException(name, $"Degrees of freedom must be above 0 (infinity allowed); found {Show(value)}.");
        }
    }

    internal static void Probability(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && value < 1))
        {
            throw new ArgumentOutOfRangeException(name, $"A probability must lie strictly between 0 and 1; found {Show(value)}.");
        }
    }

    internal static void AtLeast(int value, int least, string what, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (value < least)
        {
            throw new ArgumentOutOfRangeException(name, string.Create(CultureInfo.InvariantCulture, $"{what} must be at least {least}; found {value}."));
        }
    }

    private static string Show(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
