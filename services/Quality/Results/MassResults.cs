using System.Globalization;
using LabPipeline.Science.Gravity;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>Losses and yields by weighing: peel loss, storage shrink, fry yield.</summary>
internal static class MassResults
{
    public static void Compute(SampleReadings readings, ResultSheet sheet)
    {
        Compare(readings, QuantityCatalogue.PeelLoss, QuantityCatalogue.MassBeforePeel, QuantityCatalogue.MassAfterPeel, MassLoss.PeelPercent, sheet);
        Compare(readings, QuantityCatalogue.StorageShrink, QuantityCatalogue.MassAtLoading, QuantityCatalogue.MassAtPull, MassLoss.ShrinkPercent, sheet);
        Compare(readings, QuantityCatalogue.FryYield, QuantityCatalogue.SliceMass, QuantityCatalogue.ChipMass, MassLoss.FryYieldPercent, sheet);
    }

    /// <summary>Pieces weighed apart (tubers) are added up; repeat weighings of one piece are averaged.</summary>
    private static void Compare(
        SampleReadings readings, Quantity result, Quantity before, Quantity after, Func<decimal, decimal, decimal> percent, ResultSheet sheet)
    {
        var (whole, rest) = (readings.Of(before), readings.Of(after));
        if (whole.Count == 0 || rest.Count == 0)
        {
            return;
        }

        var pieces = PiecesOf(whole);
        if (!pieces.Keys.ToHashSet().SetEquals(PiecesOf(rest).Keys))
        {
            return;
        }

        var (massBefore, massAfter) = (pieces.Values.Sum(), PiecesOf(rest).Values.Sum());
        if (massBefore <= 0m || massAfter < 0m)
        {
            sheet.Unusable(
                result, "",
                string.Create(CultureInfo.InvariantCulture, $"cannot be computed from {before.Name} {massBefore:0.####} g and {after.Name} {massAfter:0.####} g, ")
                    + "expected more than 0 before and 0 or more after",
                "Enter what the balance showed and export again.");
            return;
        }

        sheet.Add(result, percent(massBefore, massAfter), 1, null, "by mass", whole.Concat(rest).Select(reading => reading.ReadingId));
    }

    private static Dictionary<int, decimal> PiecesOf(IReadOnlyList<SampleReading> readings) =>
        readings.GroupBy(reading => reading.Tuber ?? 0).ToDictionary(piece => piece.Key, piece => piece.Average(reading => reading.Value));
}
