namespace LabPipeline.Station.Demo;

/// <summary>What the warehouse holds after the demonstration.</summary>
internal sealed record DemoSummary
{
    public int Files { get; init; }

    public int Readings { get; init; }

    public int Samples { get; init; }

    public int SamplesWithResults { get; init; }

    public int Results { get; init; }
}
