namespace LabPipeline.Science.Order;

/// <summary>A sample of the order where it was reported and where it was planned; both count from 1.</summary>
internal sealed record PlacedSample(string Label, int Place, int PlannedPlace)
{
    public int By => Place - PlannedPlace;
}
