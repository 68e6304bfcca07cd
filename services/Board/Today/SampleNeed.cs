using LabPipeline.Science.Quantities;

namespace LabPipeline.Board.Today;

/// <summary>One quantity that one sample of a pull should have, and whether it has it.</summary>
public sealed record SampleNeed
{
    public string BayCode { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public string CloneName { get; init; } = "";

    public string Treatment { get; init; } = "";

    public string Barcode { get; init; } = "";

    public int QuantityId { get; init; }

    public bool Measured { get; init; }

    public string Quantity => QuantityCatalogue.Get(QuantityId).Name;
}
