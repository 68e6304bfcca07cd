using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>What the bench does to one sample, before any instrument writes it down.</summary>
/// <remarks>
/// Weights in g, temperatures in degF, cleaned surface in %.
/// </remarks>
internal sealed record DemoSample(
    PlannedSample Planned,
    IReadOnlyList<DemoExtract> Extracts,
    IReadOnlyList<DemoChip> Chips,
    double WeightInAir,
    double WeightInWater,
    double WaterTemperature,
    double MassBeforePeel,
    double MassAfterPeel,
    int CleanedSurface)
{
    public string Barcode => Planned.Barcode.Text;
}
