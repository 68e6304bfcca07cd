using LabPipeline.Warehouse.Plan.Rows;

namespace LabPipeline.Warehouse.Plan;

/// <summary>A question is planned or it is not: one that was stated neither changes nor disappears, others may be added.</summary>
internal sealed class ContrastComparison
{
    public ContrastComparison(IReadOnlyList<ContrastRow> stored, IReadOnlyList<ContrastRow> offered)
    {
        var before = ByName(stored);
        var after = ByName(offered);
        Changed = [.. before.Where(pair => after.GetValueOrDefault(pair.Key) != pair.Value)
            .Select(pair => new PlanDifference($"planned contrast {pair.Key}", pair.Value, after.GetValueOrDefault(pair.Key) ?? "nothing"))];
        Added = [.. offered.Where(row => !before.ContainsKey(row.Name))];
    }

    public IReadOnlyList<PlanDifference> Changed { get; }

    public IReadOnlyList<ContrastRow> Added { get; }

    private static Dictionary<string, string> ByName(IReadOnlyList<ContrastRow> rows) => rows.GroupBy(row => row.Name)
        .ToDictionary(group => group.Key, group => PlannedContrast.Describe(group.First().Factors, group.Select(row => (row.Cell, row.Coefficient))));
}
