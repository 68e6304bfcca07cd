using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Rules;

/// <summary>A reading of a fry batch in effect.</summary>
public sealed record FryReading
{
    public string RowKey { get; init; } = "";

    public int QuantityId { get; init; }

    public decimal Value { get; init; }

    public string FileName { get; init; } = "";

    public int Line { get; init; }

    public Quantity Quantity => QuantityCatalogue.Get(QuantityId);
}
