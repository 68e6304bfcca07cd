namespace LabPipeline.Intake.Profiles;

/// <summary>Rows that are not about a sample.</summary>
/// <remarks>
/// <c>Material</c>: name of the control material, or of the fry batch.
/// </remarks>
public sealed record RowRule(RowCondition When, CellSource Material);
