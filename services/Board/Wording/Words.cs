using System.Globalization;
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

    /// <summary>How long ago: seconds up to two minutes, then minutes, hours or days, with symbols that need no translation.</summary>
    public static string Age(TimeSpan age) => age switch
    {
        _ when age < TimeSpan.FromMinutes(2) => string.Create(CultureInfo.InvariantCulture, $"{age.TotalSeconds:0} s"),
        _ when age < TimeSpan.FromHours(2) => string.Create(CultureInfo.InvariantCulture, $"{age.TotalMinutes:0} min"),
        _ when age < TimeSpan.FromDays(2) => string.Create(CultureInfo.InvariantCulture, $"{age.TotalHours:0} h"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{age.TotalDays:0} d"),
    };

    /// <summary>A unit's symbol; none for the unit one.</summary>
    public static string Unit(string symbol) => symbol == Dimensionless ? "" : symbol;
}
