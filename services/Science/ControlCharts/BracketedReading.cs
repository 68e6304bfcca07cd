namespace LabPipeline.Science.ControlCharts;

/// <summary>A reading and what its controls say.</summary>
/// <param name="Id">Identity of the reading.</param>
/// <param name="State">What the controls say.</param>
/// <param name="Before">Controls next before it; empty when there is none.</param>
/// <param name="After">Controls next after it; empty when there is none.</param>
public sealed record BracketedReading(string Id, BracketState State, IReadOnlyList<RunEntry> Before, IReadOnlyList<RunEntry> After);
