using System.Globalization;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>Numbers as sentences show them.</summary>
internal static class NumberText
{
    private const int Digits = 4;

    /// <summary>Rounded half to even to four significant digits, without trailing zeros.</summary>
    public static string Of(decimal value)
    {
        if (value == 0m)
        {
            return "0";
        }

        var magnitude = (int)Math.Floor(Math.Log10((double)Math.Abs(value))) + 1;
        var decimals = Math.Clamp(Digits - magnitude, 0, 12);
        return decimal.Round(value, decimals, MidpointRounding.ToEven).ToString("0.############", CultureInfo.InvariantCulture);
    }

    /// <summary>A number with its unit; a pure number has none.</summary>
    public static string With(decimal value, Unit unit) => With(Of(value), unit);

    /// <summary>Text with its unit; a pure number has none.</summary>
    public static string With(string text, Unit unit) => unit == Unit.One ? text : $"{text} {unit}";

    public static string Of(int value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Of(DateOnly value) => value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The first <paramref name="most"/> items, and how many more there are.</summary>
    public static string List(IReadOnlyCollection<string> items, int most = 12) => items.Count <= most
        ? string.Join(", ", items)
        : string.Join(", ", items.Take(most)) + Invariant($" and {items.Count - most} more");

    public static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
