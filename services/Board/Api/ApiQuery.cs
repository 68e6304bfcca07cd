using System.ComponentModel;

namespace LabPipeline.Board.Api;

/// <summary>What every list of the interface takes.</summary>
public sealed record ApiQuery
{
    public const int LargestSize = 1000;

    [Description("Number of the part, from 1.")]
    public int Page { get; init; } = 1;

    [Description("Rows of a part, at most 1000.")]
    public int Size { get; init; } = 100;

    [Description("json or csv.")]
    public string Format { get; init; } = "json";

    public string? Trial { get; init; }

    public int? Pull { get; init; }

    [Description("Name of a quantity, such as glucose.")]
    public string? Quantity { get; init; }

    [Description("State of alerts (open, cleared, settled) or of arrivals (stored, duplicate, refused, waiting, taken out).")]
    public string? State { get; init; }

    [Description("Level of alerts: block, hold, note.")]
    public string? Level { get; init; }

    public int Skip => (Page - 1) * Size;

    /// <returns>What is wrong by the parameter's name; empty when nothing is.</returns>
    public IReadOnlyDictionary<string, string[]> Faults()
    {
        var faults = new Dictionary<string, string[]>();
        if (Page is < 1 or > 1_000_000)
        {
            faults["page"] = [$"Found {Page}; expected a whole number from 1."];
        }

        if (Size is < 1 or > LargestSize)
        {
            faults["size"] = [$"Found {Size}; expected 1 to {LargestSize}."];
        }

        if (Format is not ("json" or "csv"))
        {
            faults["format"] = [$"Found '{Format}'; expected json or csv."];
        }

        return faults;
    }
}
