using System.Globalization;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>One piece weighed in air and under water: the bag as a whole, or a tuber. Repeat weighings are averaged first.</summary>
/// <param name="Where">The piece, such as <c>tuber 3</c>; empty for the bag.</param>
/// <param name="SpecificGravity">Unrounded; null when the weights do not give one.</param>
/// <param name="WhyNot">Why there is none although both weights are there; empty otherwise.</param>
/// <param name="FromReadings">Identifiers of the weights.</param>
public sealed record Weighing(string Where, decimal? SpecificGravity, string WhyNot, IReadOnlyList<long> FromReadings)
{
    /// <summary>The pieces of one sample that were weighed both ways.</summary>
    public static IReadOnlyList<Weighing> Read(IEnumerable<SampleReading> readings) =>
    [
        .. readings.Where(reading => reading.QuantityId == QuantityCatalogue.WeightInAir.Id || reading.QuantityId == QuantityCatalogue.WeightInWater.Id)
            .GroupBy(reading => reading.Tuber)
            .OrderBy(piece => piece.Key)
            .Select(piece => Weigh(piece.Key, [.. piece]))
            .OfType<Weighing>(),
    ];

    private static Weighing? Weigh(int? tuber, List<SampleReading> weights)
    {
        var air = weights.FindAll(reading => reading.QuantityId == QuantityCatalogue.WeightInAir.Id);
        var water = weights.FindAll(reading => reading.QuantityId == QuantityCatalogue.WeightInWater.Id);
        if (air.Count == 0 || water.Count == 0)
        {
            return null;
        }

        var (a, b) = (air.Average(reading => reading.Value), water.Average(reading => reading.Value));
        var where = tuber is { } number ? string.Create(CultureInfo.InvariantCulture, $"tuber {number}") : "";
        var ids = weights.ConvertAll(reading => reading.ReadingId);
        return a > 0m && b >= 0m && b < a
            ? new Weighing(where, Science.Gravity.SpecificGravity.FromWeights(a, b), "", ids)
            : new Weighing(where, null, string.Create(
                CultureInfo.InvariantCulture, $"cannot be computed from {a:0.####} g in air and {b:0.####} g in water, expected more than 0 in air and less in water"), ids);
    }
}
