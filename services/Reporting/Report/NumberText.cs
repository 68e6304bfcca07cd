using System.Globalization;

namespace LabPipeline.Reporting.Report;

/// <summary>Numbers as the report prints them, rounded once, half to even.</summary>
internal static class NumberText
{
    public const string None = "–";

    private const double SmallestP = 0.001;

    /// <summary>Three significant digits; "&lt; 0.001" below.</summary>
    public static string P(double? p) => p is not { } value ? None : value < SmallestP ? "< 0.001" : Significant(value, 3);

    /// <summary>"p = 0.032", "p &lt; 0.001".</summary>
    public static string PWithName(double? p) => p is < SmallestP ? "p < 0.001" : $"p = {P(p)}";

    public static string Fixed(double? value, int decimals) => value is not { } known || !double.IsFinite(known)
        ? None
        : Minus(known.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));

    public static string Fixed(decimal value, int decimals) => Fixed((double)value, decimals);

    /// <summary>So many significant digits, without an exponent where that is readable.</summary>
    public static string Significant(double? value, int digits)
    {
        if (value is not { } known || !double.IsFinite(known))
        {
            return None;
        }

        var magnitude = known == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(known)));
        var decimals = digits - 1 - magnitude;
        return decimals is >= 0 and <= 9
            ? Fixed(known, decimals)
            : Minus(known.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
    }

    /// <summary>Whole degrees of freedom without decimals, others with one.</summary>
    public static string Df(double? df) => df is not { } value ? None
        : Math.Abs(value - Math.Round(value)) < 1e-6 ? value.ToString("F0", CultureInfo.InvariantCulture) : Fixed(value, 1);

    public static string Whole(long value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Percent(double part, double whole) => whole == 0 ? None : $"{Fixed(100 * part / whole, 1)} %";

    public static string Date(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Instant(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) + " UTC";

    /// <summary>"-0.0" is nothing to print; a true minus reads better than a hyphen.</summary>
    private static string Minus(string text) => text[0] != '-' ? text : text.All(symbol => symbol is '-' or '0' or '.') ? text[1..] : "−" + text[1..];
}
