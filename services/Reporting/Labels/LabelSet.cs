using LabPipeline.Science.Barcodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Labels;

/// <summary>The labels of a pull.</summary>
public static class LabelSet
{
    /// <summary>One label a sample, in the order of the plan.</summary>
    public static IReadOnlyList<LabelText> Samples(TrialPlan plan, int pull, BlindCodes? blind)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. PlanSamples.Of(plan).Where(sample => sample.Pull.Number == pull).Select(sample => TextOf(plan, sample, blind))];
    }

    /// <summary>An S and an F label for every sample, or for every tuber of it, side by side.</summary>
    public static IReadOnlyList<LabelText> Halves(TrialPlan plan, int pull, BlindCodes? blind, bool eachTuber)
    {
        IReadOnlyList<int?> tubers = eachTuber ? [.. Enumerable.Range(1, plan.SampleSize.Tubers).Select(tuber => (int?)tuber)] : [null];
        return
        [
            .. from label in Samples(plan, pull, blind)
               from tuber in tubers
               from half in Enum.GetValues<TuberHalf>()
               select label with { Half = half, Tuber = tuber },
        ];
    }

    private static LabelText TextOf(TrialPlan plan, PlannedSample sample, BlindCodes? blind) => new()
    {
        Barcode = sample.Barcode.Text,
        Trial = plan.Code,
        Plot = sample.Plot.Code,
        Block = sample.Plot.Block,
        Pull = sample.Pull.Number,
        Treatment = blind is null
            ? string.Join(" / ", plan.Design.Factors.Select(factor => LevelOf(factor, sample.Plot)))
            : "code " + blind.Of(sample.Plot),
    };

    private static string LevelOf(TrialFactor factor, TrialPlot plot) =>
        factor.Unit is null ? plot.Levels[factor.Name] : $"{plot.Levels[factor.Name]} {factor.Unit}";
}
