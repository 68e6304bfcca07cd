using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>The bench days of the season: one block a day from the day a pull is due, mishaps included.</summary>
internal sealed class DemoBench(TrialPlan plan)
{
    private readonly DemoBiology _biology = new(plan);

    public IEnumerable<BenchSession> Sessions() =>
        from sample in PlanSamples.Of(plan)
        group sample by (sample.Pull, sample.Plot.Block) into block
        where (block.Key.Pull.Number, block.Key.Block) != DemoMishaps.Forgotten
        select SessionOf(block.Key.Pull, block.Key.Block, block);

    private BenchSession SessionOf(TrialPull pull, string block, IEnumerable<PlannedSample> samples)
    {
        var days = plan.Design.Blocks.Index().Single(entry => entry.Item == block).Index
            + ((pull.Number, block) == DemoMishaps.Late ? DemoMishaps.DaysLate : 0);
        return new BenchSession(
            pull.Number, block, pull.DueOn.AddDays(days), DemoMishaps.Apply(pull, block, [.. samples.Select(_biology.Draw)]));
    }
}
