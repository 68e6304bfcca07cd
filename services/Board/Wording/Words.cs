using Microsoft.Extensions.Localization;

namespace LabPipeline.Board.Wording;

/// <summary>Names of the warehouse as people read them.</summary>
internal static class Words
{
    private const string Dimensionless = "1";

    /// <summary>A quantity's name in the reader's language; one that a newer program wrote keeps its own, spaced out.</summary>
    public static string Quantity(this IStringLocalizer texts, string name)
    {
        var text = texts["Quantity." + name];
        return text.ResourceNotFound ? Spaced(name) : text.Value;
    }

    public static string Spaced(string name) => name.Replace('_', ' ');

    /// <summary>A unit's symbol; none for the unit one.</summary>
    public static string Unit(string symbol) => symbol == Dimensionless ? "" : symbol;
}
