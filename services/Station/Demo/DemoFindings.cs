using System.Globalization;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Station.Demo;

/// <summary>Sets what was planted beside what the pipeline said about it: pure.</summary>
public static class DemoFindings
{
    public static IReadOnlyList<DemoFinding> Match(
        IReadOnlyList<PlantedTrouble> troubles, IReadOnlyList<Alert> alerts, IReadOnlyList<ArrivalListing> arrivals) =>
        [.. troubles.Select(trouble => trouble.Rule is { } rule ? ByAlert(trouble, rule, alerts) : ByArrival(trouble, arrivals))];

    private static DemoFinding ByAlert(PlantedTrouble trouble, string rule, IReadOnlyList<Alert> alerts)
    {
        var alert = alerts.FirstOrDefault(alert => alert.RuleName == rule && Speaks(alert, trouble.Where));
        return alert is null
            ? new DemoFinding(trouble, false, $"no '{rule}' alert")
            : new DemoFinding(trouble, true, string.Create(CultureInfo.InvariantCulture, $"alert {alert.AlertId}, {alert.Level}: {rule}"));
    }

    /// <summary>A file that must pass in silence is found when its rows are recognised as known.</summary>
    private static DemoFinding ByArrival(PlantedTrouble trouble, IReadOnlyList<ArrivalListing> arrivals)
    {
        var arrival = arrivals.FirstOrDefault(row => row.Name == trouble.Where);
        return arrival switch
        {
            { State: "duplicate" } => new DemoFinding(trouble, true, "arrivals: duplicate, counted once"),
            { RepeatedCount: > 0, ConflictingCount: 0 } => new DemoFinding(
                trouble, true, string.Create(CultureInfo.InvariantCulture, $"arrivals: {arrival.NewCount} new rows, {arrival.RepeatedCount} known")),
            _ => new DemoFinding(trouble, false, "not recognised"),
        };
    }

    private static bool Speaks(Alert alert, string where)
    {
        var text = $"{alert.Headline} {alert.Scope} {alert.Facts}";
        return where.Split(", ").All(part => text.Contains(part, StringComparison.Ordinal));
    }
}
