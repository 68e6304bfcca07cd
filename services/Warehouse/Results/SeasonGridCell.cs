namespace LabPipeline.Warehouse.Results;

/// <summary>One cell of the season grid: a plot at a pull and an expected measurement.</summary>
public sealed record SeasonGridCell
{
    public int PullNo { get; init; }

    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public string Barcode { get; init; } = "";

    public string Quantity { get; init; } = "";

    public int ReadingsExpected { get; init; }

    public int Readings { get; init; }

    /// <summary>One of <see cref="MeasurementStates"/>.</summary>
    public string State { get; init; } = "";

    public string Reason { get; init; } = "";
}
