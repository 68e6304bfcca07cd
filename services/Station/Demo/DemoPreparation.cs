using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>What the invented laboratory decided before its season: plan, bench orders, targets of its controls.</summary>
public static class DemoPreparation
{
    private const string Who = "demo";

    /// <summary>Writes it down; what is there already stays.</summary>
    public static async Task<PlanLoad> PrepareAsync(WarehouseSession session, DemoScenario scenario, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        var load = await PlanStore.LoadAsync(session, scenario.Plan, now, Who);
        foreach (var pull in PlanSamples.Of(scenario.Plan).GroupBy(sample => sample.Pull.Number))
        {
            foreach (var kind in BenchOrderKinds.All)
            {
                await BenchOrderStore.KeepAsync(session, OrderOf(scenario.Plan, pull.Key, kind, [.. pull], now), null);
            }
        }

        await DemoControls.StateAsync(session, now);
        return load;
    }

    // The field plan is randomised within blocks already; the bench follows it.
    private static BenchOrder OrderOf(TrialPlan plan, int pull, string kind, IReadOnlyList<PlannedSample> samples, DateTimeOffset now) => new()
    {
        TrialCode = plan.Code,
        PullNo = pull,
        Kind = kind,
        Seed = (long)DemoRandom.Seed,
        MadeAt = now,
        MadeBy = Who,
        Places =
        [
            .. samples.Select((sample, index) => new BenchPlace
            {
                Position = index + 1,
                Barcode = sample.Barcode.Text,
                Block = sample.Plot.Block,
                PlotCode = sample.Plot.Code,
            }),
        ],
    };
}
