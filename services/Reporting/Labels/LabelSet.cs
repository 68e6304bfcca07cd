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
    public static IReadOnlyList<LabelText> Halves(TrialPlan plan, int pull, BlindCodes? blind, bool eachTuber) =>
        Halves(Samples(plan, pull, blind), eachTuber ? plan.SampleSize.Tubers : null);

    /// <param name="samples">Labels of whole samples.</param>
    /// <param name="tubers">How many tubers a sample has; null when the halves of a sample are pooled.</param>
    public static IReadOnlyList<LabelText> Halves(IReadOnlyList<LabelText> samples, int? tubers)
    {
        IReadOnlyList<int?> numbers = tubers is { } count ? [.. Enumerable.Range(1, count).Select(tuber => (int?)tuber)] : [null];
        return
        [
            .. from label in samples
               from tuber in numbers
               from half in Enum.GetValues<TuberHalf>()
               select label with { Half = half, Tuber = tuber },
        ];
    }

    internal static string TreatmentOf(IEnumerable<(string Level, string? Unit)> levels) =>
        string.Join(" / ", levels.Select(level => level.Unit is null ? level.Level : $"{level.Level} {level.Unit}"));

    private static LabelText TextOf(TrialPlan plan, PlannedSample sample, BlindCodes? blind) => new()
    {
        Barcode = sample.Barcode.Text,
        Trial = plan.Code,
        Plot = sample.Plot.Code,
        Block = sample.Plot.Block,
        Pull = sample.Pull.Number,
        Treatment = blind is null
            ? TreatmentOf(plan.Design.Factors.Select(factor => (sample.Plot.Levels[factor.Name], factor.Unit)))
            : "code " + blind.Of(sample.Plot),
    };
}
