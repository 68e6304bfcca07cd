using System.Globalization;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>What people judge at the bench: stem-end scores, other defects, cleaned surface.</summary>
internal static class BenchResults
{
    /// <summary>A yes/no defect is there when at least half of the judgements of a chip say yes.</summary>
    private const decimal PresentFrom = 0.5m;

    private static readonly Quantity[] YesOrNo =
    [
        QuantityCatalogue.Greening, QuantityCatalogue.HollowHeart, QuantityCatalogue.Bruise, QuantityCatalogue.InternalBrowning, QuantityCatalogue.Blister,
    ];

    public static void Compute(SampleReadings readings, TrialSettings trial, ResultSheet sheet)
    {
        var chips = Chip.Of(readings.All.Where(reading =>
            reading.QuantityId == QuantityCatalogue.StemEndDefect.Id || YesOrNo.Any(defect => defect.Id == reading.QuantityId)));
        AddStemEnd(chips, trial, sheet);
        AddUndesirable(chips, trial, sheet);
        AddCleanedSurface(readings, sheet);
    }

    private static void AddStemEnd(IReadOnlyList<Chip> chips, TrialSettings trial, ResultSheet sheet)
    {
        var scored = chips.Where(chip => chip.Mean(QuantityCatalogue.StemEndDefect) is not null).ToList();
        if (scored.Count == 0)
        {
            return;
        }

        var scores = scored.ConvertAll(chip => chip.Mean(QuantityCatalogue.StemEndDefect)!.Value);
        var sources = scored.SelectMany(chip => chip.FromReadings[QuantityCatalogue.StemEndDefect.Id]).ToList();
        var severe = scored.Count(chip => IsSevere(chip, trial));
        sheet.Add(QuantityCatalogue.MeanStemEndDefect, scores.Average(), scores.Count, Spread.Of(scores), Text($"mean of {scores.Count} chips"), sources);
        sheet.Add(QuantityCatalogue.SevereStemEnd, 100m * severe / scored.Count, scored.Count, null, Text($"{severe} of {scored.Count} chips"), sources);
    }

    private static void AddUndesirable(IReadOnlyList<Chip> chips, TrialSettings trial, ResultSheet sheet)
    {
        if (chips.Count == 0)
        {
            return;
        }

        var undesirable = chips.Count(chip => IsSevere(chip, trial) || YesOrNo.Any(defect => chip.Mean(defect) >= PresentFrom));
        sheet.Add(
            QuantityCatalogue.UndesirableChips, 100m * undesirable / chips.Count, chips.Count, null, Text($"{undesirable} of {chips.Count} chips"),
            chips.SelectMany(chip => chip.FromReadings.SelectMany(ids => ids)));
    }

    private static void AddCleanedSurface(SampleReadings readings, ResultSheet sheet)
    {
        var judged = readings.Of(QuantityCatalogue.CleanedSurface);
        if (judged.Count > 0)
        {
            var pieces = judged.GroupBy(reading => reading.Tuber).Select(piece => piece.Average(reading => reading.Value)).ToList();
            sheet.Add(
                QuantityCatalogue.MeanCleanedSurface, pieces.Average(), pieces.Count, Spread.Of(pieces),
                pieces.Count == 1 ? "one judgement" : Text($"mean of {pieces.Count} tubers"), judged.Select(reading => reading.ReadingId));
        }
    }

    private static bool IsSevere(Chip chip, TrialSettings trial) => chip.Mean(QuantityCatalogue.StemEndDefect) >= trial.SevereFromScore;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
