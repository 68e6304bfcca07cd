namespace LabPipeline.Intake.Profiles;

/// <summary>A value an instrument writes when it has none, such as 9999; numbers are compared as numbers.</summary>
/// <remarks>
/// <c>CountsAsMissing</c>: true: no value. False: the row is refused.
/// </remarks>
public sealed record Placeholder(string Text, bool CountsAsMissing);
