using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Which control chart: a material's quantity on an instrument.</summary>
public sealed record ControlChartName
{
    public string Instrument { get; init; } = "";

    public string Material { get; init; } = "";

    public int QuantityId { get; init; }

    public Quantity Quantity => QuantityCatalogue.Get(QuantityId);
}
