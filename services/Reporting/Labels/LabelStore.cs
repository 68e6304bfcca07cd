using LabPipeline.Reporting.Bench;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Labels;

/// <summary>Labels of a pull from the plan the warehouse holds.</summary>
public sealed class LabelStore
{
    private static readonly SqlText ListLevels = SqlText.Load<LabelStore>("list-label-levels");

    /// <summary>One label a sample of <paramref name="pull"/>, saying what <see cref="LabelSet.Samples"/> says of the plan document.</summary>
    public static async Task<IReadOnlyList<LabelText>> ListAsync(WarehouseSession session, BenchPull pull)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(pull);
        var levels = (await session.QueryAsync<LevelRow>(ListLevels, new { trialCode = pull.TrialCode }).ConfigureAwait(false)).ToLookup(row => row.PlotCode);
        return
        [
            .. pull.Samples.Select(sample => new LabelText
            {
                Barcode = sample.Barcode,
                Trial = pull.TrialCode,
                Plot = sample.PlotCode,
                Block = sample.Block,
                Pull = pull.PullNo,
                Treatment = LabelSet.TreatmentOf(levels[sample.PlotCode].Select(level => (level.Level, level.Unit))),
            }),
        ];
    }

    private sealed class LevelRow
    {
        public string PlotCode { get; init; } = "";

        public string Level { get; init; } = "";

        public string? Unit { get; init; }
    }
}
