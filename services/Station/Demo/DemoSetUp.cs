namespace LabPipeline.Station.Demo;

/// <summary>What setting up the demonstration did.</summary>
public enum DemoSetUp
{
    Written,

    /// <summary>A finished set-up was there and was kept.</summary>
    Kept,
}
