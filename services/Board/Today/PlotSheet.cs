namespace LabPipeline.Board.Today;

/// <summary>One plot's sample on a pull day.</summary>
/// <param name="Plot">The plot's code.</param>
/// <param name="CloneName">Its clone.</param>
/// <param name="Treatment">Its treatment.</param>
/// <param name="Barcode">The sample's barcode.</param>
/// <param name="Missing">Quantities without a reading in effect.</param>
/// <param name="Expected">How many quantities the plan asks for.</param>
public sealed record PlotSheet(string Plot, string CloneName, string Treatment, string Barcode, IReadOnlyList<string> Missing, int Expected)
{
    public bool HasNothing => Missing.Count == Expected;
}
