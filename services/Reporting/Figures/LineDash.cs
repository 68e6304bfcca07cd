using System.Globalization;

namespace LabPipeline.Reporting.Figures;

/// <summary>Line patterns, carried through the drawing as widths that no other line has.</summary>
internal static class LineDash
{
    private const float Hundredth = 0.01f;

    private static readonly string?[] Patterns = [null, "8 4", "2 3", "5 3", "10 3 2 3"];

    /// <summary>Pattern of limits and control limits.</summary>
    public const int Rule = 3;

    public static int Count => Patterns.Length;

    /// <summary>A width that stands for itself and the pattern.</summary>
    public static float Width(float width, int pattern) => width + (pattern % Patterns.Length * Hundredth);

    /// <returns>The dashes a width stands for, or null for a full line.</returns>
    public static string? Find(string width)
    {
        var hundredths = (int)Math.Round(100 * decimal.Parse(width, CultureInfo.InvariantCulture)) % 10;
        return hundredths < Patterns.Length ? Patterns[hundredths] : null;
    }
}
