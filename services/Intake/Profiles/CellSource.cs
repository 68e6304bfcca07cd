namespace LabPipeline.Intake.Profiles;

/// <summary>A text that stands in a column, or is the same for the whole file.</summary>
/// <remarks>
/// <c>Required</c>: when false, the cell may be empty.
/// </remarks>
public sealed record CellSource(string? Column, string? Constant, bool Required = true);
