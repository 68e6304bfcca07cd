using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>The bench days of the season: one block a day from the day a pull is due, mishaps included unless it is a clean season.</summary>
internal sealed class DemoBench(TrialPlan plan, bool clean)
{
    private readonly DemoBiology _biology = new(plan);

    public IEnumerable<BenchSession> Sessions() =>
        from sample in PlanSamples.Of(plan)
        group sample by (sample.Pull, sample.Plot.Block) into block
        where clean || (block.Key.Pull.Number, block.Key.Block) != DemoMishaps.Forgotten
        select SessionOf(block.Key.Pull, block.Key.Block, block);

    private BenchSession SessionOf(TrialPull pull, string block, IEnumerable<PlannedSample> samples)
    {
        var days = plan.Design.Blocks.Index().Single(entry => entry.Item == block).Index
            + (!clean && (pull.Number, block) == DemoMishaps.Late ? DemoMishaps.DaysLate : 0);
        IReadOnlyList<DemoSample> drawn = [.. samples.Select(_biology.Draw)];
        return new BenchSession(pull.Number, block, pull.DueOn.AddDays(days), clean ? drawn : DemoMishaps.Apply(pull, block, drawn));
    }
}
