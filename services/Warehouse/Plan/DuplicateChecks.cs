namespace LabPipeline.Warehouse.Plan;

/// <summary>Things that may be listed once only. Codes that differ in capitals alone count as the same: one of the two databases says so.</summary>
internal static class DuplicateChecks
{
    public static IEnumerable<PlanFault> Of(PlanDraft draft)
    {
        var plan = draft.Plan;
        return
        [
            .. Twice(plan.Plots.Zip(draft.PlotPaths, (plot, path) => (plot.Code, path)), "plot"),
            .. Twice(plan.Bays.Select((bay, index) => (bay.Code, $"bays[{index}]")), "bay"),
            .. Twice(plan.Design.Factors.Select((factor, index) => (factor.Name, $"design.factors[{index}]")), "factor"),
            .. Twice(plan.Repeatability.Select(known => (known.Quantity.Name, "repeatability")), "quantity"),
            .. Twice(plan.Contrasts.Select((contrast, index) => (contrast.Name, $"contrasts[{index}]")), "contrast"),
            .. Twice(plan.Expected.Select(expected => ($"{expected.Quantity.Name} at pull {expected.PullNumber}", "expected")), "quantity"),
        ];
    }

    private static IEnumerable<PlanFault> Twice(IEnumerable<(string Key, string Path)> entries, string what) =>
        entries.Where(entry => entry.Key.Length > 0)
            .GroupBy(entry => entry.Key, StringComparer.OrdinalIgnoreCase)
            .SelectMany(group => group.Skip(1).Select(again => new PlanFault(
                again.Path, $"the {what} '{again.Key}' again", $"each {what} once, capital and small letters counting as the same", "Remove or rename one.")));
}
