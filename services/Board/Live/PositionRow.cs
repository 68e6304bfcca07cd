namespace LabPipeline.Board.Live;

/// <summary>How far the warehouse has come: every number grows, or changes, with what a page could show anew.</summary>
public sealed record PositionRow
{
    public long Told { get; init; }

    public long Changed { get; init; }

    public long Arrived { get; init; }

    public int Held { get; init; }

    public DateTimeOffset? Judged { get; init; }
}
