using System.ComponentModel;

namespace LabPipeline.Board.Api;

/// <summary>What every list of the interface takes.</summary>
public sealed record ApiQuery
{
    public const int LargestSize = 1000;

    private const int UsualSize = 100;

    private const int LastPart = 1_000_000;

    [Description("Number of the part, from 1.")]
    public int? Page { get; init; }

    [Description("Rows of a part, at most 1000; 100 when it is not given.")]
    public int? Size { get; init; }

    [Description("json, or csv; json when it is not given.")]
    public string? Format { get; init; }

    public string? Trial { get; init; }

    public int? Pull { get; init; }

    [Description("Name of a quantity, such as glucose.")]
    public string? Quantity { get; init; }

    [Description("State of alerts (open, cleared, settled) or of arrivals (stored, duplicate, refused, waiting, taken out).")]
    public string? State { get; init; }

    [Description("Level of alerts: block, hold, note.")]
    public string? Level { get; init; }

    internal int Part => Page ?? 1;

    internal int Most => Size ?? UsualSize;

    internal int Skip => (Part - 1) * Most;

    /// <returns>What is wrong by the parameter's name; empty when nothing is.</returns>
    public IReadOnlyDictionary<string, string[]> Faults()
    {
        var faults = new Dictionary<string, string[]>();
        if (Part is < 1 or > LastPart)
        {
            faults["page"] = [$"Found {Part}; expected a whole number from 1."];
        }

        if (Most is < 1 or > LargestSize)
        {
            faults["size"] = [$"Found {Most}; expected 1 to {LargestSize}."];
        }

        if (Format is not (null or "json" or "csv"))
        {
            faults["format"] = [$"Found '{Format}'; expected json or csv."];
        }

        return faults;
    }
}
