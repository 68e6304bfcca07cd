namespace LabPipeline.Warehouse.Plan;

/// <summary>The order in which the samples of a pull are analysed or fried, as it was drawn.</summary>
public sealed record BenchOrder
{
    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }

    /// <summary>One of <see cref="BenchOrderKinds"/>.</summary>
    public string Kind { get; init; } = "";

    /// <summary>1 for the first draw; the highest is in effect.</summary>
    public int DrawNo { get; init; }

    public long Seed { get; init; }

    public DateTimeOffset MadeAt { get; init; }

    public string MadeBy { get; init; } = "";

    /// <summary>Why it was drawn anew; "first draw" for the first.</summary>
    public string Why { get; init; } = "";

    /// <summary>By position.</summary>
    public IReadOnlyList<BenchPlace> Places { get; init; } = [];

    /// <summary>Planned barcodes of the blocks to which any of <paramref name="reported"/> belongs: a run holds one block or a few, not the pull.</summary>
    public IReadOnlyList<string> PlannedAround(IReadOnlyCollection<string> reported)
    {
        var measured = reported.ToHashSet(StringComparer.Ordinal);
        var blocks = Places.Where(place => measured.Contains(place.Barcode)).Select(place => place.Block).ToHashSet(StringComparer.Ordinal);
        return [.. Places.Where(place => blocks.Contains(place.Block)).Select(place => place.Barcode)];
    }
}
