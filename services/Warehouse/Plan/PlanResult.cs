using System.Diagnostics.CodeAnalysis;

namespace LabPipeline.Warehouse.Plan;

/// <summary>A plan, or everything that keeps the document from being one.</summary>
public sealed record PlanResult(TrialPlan? Plan, IReadOnlyList<PlanFault> Faults)
{
    [MemberNotNullWhen(true, nameof(Plan))]
    public bool IsValid => Plan is not null;
}
