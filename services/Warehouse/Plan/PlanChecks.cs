namespace LabPipeline.Warehouse.Plan;

/// <summary>Holds the parts of a draft against each other. Empty texts, zeros and first days were told of before and are passed over.</summary>
internal static class PlanChecks
{
    public static IEnumerable<PlanFault> Of(PlanDraft draft) =>
    [
        .. TrialChecks.Of(draft.Plan),
        .. DesignChecks.Of(draft.Plan),
        .. PlotChecks.Of(draft),
        .. LayoutChecks.Of(draft),
        .. PullChecks.Of(draft.Plan),
        .. ContrastChecks.Of(draft.Plan),
        .. DuplicateChecks.Of(draft),
    ];
}
