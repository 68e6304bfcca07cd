using System.Globalization;
using System.Text.Json;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>What the profile of a file stated about the method behind its readings.</summary>
public sealed class MethodFacts
{
    private readonly IReadOnlyDictionary<string, string> _facts;

    public MethodFacts(IReadOnlyDictionary<string, string> facts) => _facts = facts;

    /// <summary>A method of which nothing is known.</summary>
    public static MethodFacts None { get; } = new(new Dictionary<string, string>());

    /// <summary>Reads the facts of a ledger row: a JSON object of texts, or nothing.</summary>
    /// <exception cref="JsonException">It is something else.</exception>
    public static MethodFacts Parse(string? json) => string.IsNullOrWhiteSpace(json)
        ? None
        : new(JsonSerializer.Deserialize<Dictionary<string, string>>(json) ?? []);

    /// <summary>The fact, or null when the profile does not state it.</summary>
    public string? Find(string name) => _facts.GetValueOrDefault(name);

    /// <summary>The quantitation limit of a reading in the quantity's canonical unit; null when the profile states none.</summary>
    /// <exception cref="FormatException">The text is not a number above zero.</exception>
    public decimal? LimitOf(Quantity quantity)
    {
        if (Find(MethodFactNames.LimitOf(quantity)) is not { } text)
        {
            return null;
        }

        return decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var limit) && limit > 0m
            ? limit
            : throw new FormatException(
                $"states '{text}' as {MethodFactNames.LimitOf(quantity)}, expected a number above 0 in {quantity.Unit}");
    }
}
