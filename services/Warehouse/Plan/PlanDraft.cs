namespace LabPipeline.Warehouse.Plan;

/// <summary>A plan as read, before its parts were held against each other; what could not be read is empty in it and noted.</summary>
/// <remarks>
/// <c>PlotPaths</c>: where each plot stands, in the order of the plan's plots.
/// </remarks>
internal sealed record PlanDraft(TrialPlan Plan, IReadOnlyList<string> PlotPaths);
