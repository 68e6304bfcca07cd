using System.Globalization;
using LabPipeline.Science.Barcodes;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Numbers the samples of a plan: one for every plot at every pull.</summary>
/// <remarks>
/// Pull p owns the thousand numbers from p x 1000; its plots take them in the order of the document, leaving out numbers whose check
/// character would be I, O or Q. So the same document always gives the same barcodes, and a further pull or a plot added at the end changes none
/// that was printed.
/// </remarks>
public static class PlanSamples
{
    public const int HighestPull = 99;

    /// <summary>Plots that surely fit the thousand numbers of a pull: about one number in twelve is left out.</summary>
    public const int MostPlots = 850;

    private const int NumbersPerPull = 1000;
    private const int Digits = 5;

    /// <summary>Every sample, pull by pull, plots in the order of the document.</summary>
    public static IReadOnlyList<PlannedSample> Of(TrialPlan plan) => [.. plan.Pulls.SelectMany(pull => OfPull(plan, pull))];

    private static IEnumerable<PlannedSample> OfPull(TrialPlan plan, TrialPull pull)
    {
        var season = (plan.Season % 100).ToString("00", CultureInfo.InvariantCulture);
        return SampleBarcode.Series(season, plan.Mark, pull.Number * NumbersPerPull, Digits)
            .Zip(plan.Plots, (barcode, plot) => new PlannedSample(barcode, RunningNumberOf(barcode), pull, plot));
    }

    private static int RunningNumberOf(SampleBarcode barcode) =>
        int.Parse(barcode.Payload.AsSpan(barcode.Payload.Length - Digits), CultureInfo.InvariantCulture);
}
