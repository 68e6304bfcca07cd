using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>A sample's readings in effect, in key order so that the order of arrival decides nothing.</summary>
public sealed class SampleReadings
{
    private readonly ILookup<int, SampleReading> _byQuantity;
    private readonly IReadOnlyDictionary<int, MethodFacts> _methods;

    /// <param name="inEffect">Readings that count.</param>
    /// <param name="methods">Method facts by file.</param>
    public SampleReadings(IEnumerable<SampleReading> inEffect, IReadOnlyDictionary<int, MethodFacts> methods)
    {
        All =
        [
            .. inEffect.OrderBy(reading => reading.Instrument, StringComparer.Ordinal)
                .ThenBy(reading => reading.Run, StringComparer.Ordinal)
                .ThenBy(reading => reading.RowKey, StringComparer.Ordinal)
                .ThenBy(reading => reading.QuantityId),
        ];
        _byQuantity = All.ToLookup(reading => reading.QuantityId);
        _methods = methods;
    }

    public IReadOnlyList<SampleReading> All { get; }

    public IReadOnlyList<SampleReading> Of(Quantity quantity) => [.. _byQuantity[quantity.Id]];

    public MethodFacts MethodOf(SampleReading reading) => _methods.GetValueOrDefault(reading.FileId, MethodFacts.None);
}
