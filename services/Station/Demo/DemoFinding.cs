namespace LabPipeline.Station.Demo;

/// <summary>A planted trouble, whether the pipeline named it, and what named it.</summary>
public sealed record DemoFinding(PlantedTrouble Trouble, bool IsFound, string By);
