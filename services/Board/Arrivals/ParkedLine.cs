namespace LabPipeline.Board.Arrivals;

/// <summary>A row of a file that was left out of the warehouse, and why.</summary>
public sealed record ParkedLine
{
    public int Line { get; init; }

    public string Reason { get; init; } = "";
}
