namespace LabPipeline.Board.Season;

/// <summary>Where one expected quantity of one plot and pull stands.</summary>
public sealed record GridRow
{
    public string PlotCode { get; init; } = "";

    public string CloneName { get; init; } = "";

    public string Treatment { get; init; } = "";

    public int PullNo { get; init; }

    public string Barcode { get; init; } = "";

    public string Quantity { get; init; } = "";

    /// <summary>expected, done, late, missing or excluded.</summary>
    public string State { get; init; } = "";
}
