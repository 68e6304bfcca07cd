namespace LabPipeline.Board.Bench;

/// <summary>One row of a bench sheet: when it was noted, and its cells by column.</summary>
public sealed record BenchRow(DateTimeOffset At, IReadOnlyDictionary<string, string> Cells);
