namespace LabPipeline.Board.Today;

/// <summary>One plot's sample on a pull day.</summary>
/// <param name="Plot">The plot's code.</param>
/// <param name="CloneName">Its clone.</param>
/// <param name="Treatment">Its treatment.</param>
/// <param name="Barcode">The sample's barcode.</param>
/// <param name="Needs">Every quantity the plan asks for.</param>
public sealed record PlotSheet(string Plot, string CloneName, string Treatment, string Barcode, IReadOnlyList<SampleNeed> Needs)
{
    /// <summary>Quantities with fewer readings in effect than the plan asks for.</summary>
    public IReadOnlyList<SampleNeed> Missing => [.. Needs.Where(need => !need.Measured)];

    public bool HasNothing => Needs.All(need => need.Readings == 0);
}
