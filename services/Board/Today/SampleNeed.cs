using LabPipeline.Science.Quantities;

namespace LabPipeline.Board.Today;

/// <summary>One quantity that one sample of a pull should have, and how much of it there is.</summary>
public sealed record SampleNeed
{
    public string BayCode { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public string CloneName { get; init; } = "";

    public string Treatment { get; init; } = "";

    public string Barcode { get; init; } = "";

    public int QuantityId { get; init; }

    /// <summary>Readings the plan asks for.</summary>
    public int Expected { get; init; }

    /// <summary>Readings in effect.</summary>
    public int Readings { get; init; }

    /// <summary>Whether it counts as measured, by the rule of <c>v_pull_progress.samples_measured</c>.</summary>
    public bool Measured => Readings >= Expected;

    public string Quantity => QuantityCatalogue.Get(QuantityId).Name;
}
