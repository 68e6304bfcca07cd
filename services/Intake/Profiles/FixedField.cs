namespace LabPipeline.Intake.Profiles;

/// <summary>A column of a fixed-width file.</summary>
/// <remarks>
/// <c>Start</c>: position of its first character in the line, counted from 1.
/// <c>Length</c>: its number of characters.
/// </remarks>
public sealed record FixedField(string Name, int Start, int Length);
