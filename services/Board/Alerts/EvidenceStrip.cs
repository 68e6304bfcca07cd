using System.Globalization;
using System.Text.RegularExpressions;

namespace LabPipeline.Board.Alerts;

/// <summary>Test results of one quantity that an alert compares, and the limit their range is held against, for drawing them on one line.</summary>
/// <param name="Quantity">As the fact names it.</param>
/// <param name="Points">Each result with its name, such as <c>extract 1</c>.</param>
/// <param name="Limit">The critical range, in the unit of the results; null when the facts state none.</param>
public sealed partial record EvidenceStrip(string Quantity, IReadOnlyList<KeyValuePair<string, decimal>> Points, decimal? Limit)
{
    private const int FewestPoints = 2;

    public decimal Lowest => Points.Min(point => point.Value);

    public decimal Highest => Points.Max(point => point.Value);

    /// <summary>The strips in the facts of an alert; none when it compares no results of one sample.</summary>
    public static IReadOnlyList<EvidenceStrip> Of(IReadOnlyList<KeyValuePair<string, string>> facts) =>
    [
        .. facts.Select(fact => (Match: PointName().Match(fact.Key), fact.Value))
            .Where(fact => fact.Match.Success && Number(fact.Value) is not null)
            .GroupBy(fact => fact.Match.Groups["quantity"].Value)
            .Where(quantity => quantity.Count() >= FewestPoints)
            .Select(quantity => new EvidenceStrip(
                quantity.Key,
                [.. quantity.Select(fact => KeyValuePair.Create(fact.Match.Groups["piece"].Value, Number(fact.Value)!.Value))],
                LimitOf(facts, quantity.Key))),
    ];

    /// <summary>Where <paramref name="value"/> lies on a line of <paramref name="width"/> that holds all points and the limit, with room at both ends.</summary>
    public double PositionOf(decimal value, double width)
    {
        var span = Math.Max(Highest - Lowest, Limit ?? 0);
        return span == 0 ? width / 2 : width * (0.1 + (0.8 * (double)((value - Lowest) / span)));
    }

    private static decimal? LimitOf(IReadOnlyList<KeyValuePair<string, string>> facts, string quantity)
    {
        var name = quantity.Split(' ')[0] + " limit";
        return facts.Where(fact => fact.Key == name).Select(fact => Number(fact.Value)).FirstOrDefault();
    }

    private static decimal? Number(string text) =>
        decimal.TryParse(text.Split(' ')[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    [GeneratedRegex("^(?<quantity>.+), (?<piece>(extract|reading|tuber) .+)$")]
    private static partial Regex PointName();
}
