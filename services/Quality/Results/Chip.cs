namespace LabPipeline.Quality.Results;

/// <summary>A chip of a sample: tuber and slice, or the whole lot where a file names neither. Repeat readings are averaged.</summary>
internal sealed class Chip
{
    private readonly Dictionary<int, decimal> _means;

    private Chip(IEnumerable<SampleReading> readings)
    {
        var own = readings.ToList();
        _means = own.GroupBy(reading => reading.QuantityId).ToDictionary(group => group.Key, group => group.Average(reading => reading.Value));
        FromReadings = own.ToLookup(reading => reading.QuantityId, reading => reading.ReadingId);
    }

    /// <summary>Identifiers of the readings, by quantity.</summary>
    public ILookup<int, long> FromReadings { get; }

    public static IReadOnlyList<Chip> Of(IEnumerable<SampleReading> readings) =>
        [.. readings.GroupBy(reading => (reading.Tuber, reading.Slice)).OrderBy(chip => chip.Key).Select(chip => new Chip(chip))];

    /// <summary>Mean of the chip's repeat readings; null when it has none.</summary>
    public decimal? Mean(Science.Quantities.Quantity quantity) => _means.TryGetValue(quantity.Id, out var mean) ? mean : null;
}
