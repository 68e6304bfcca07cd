namespace LabPipeline.Intake.Reading;

/// <summary>Bounds of what is accepted, so that no file can take the memory or drown the report.</summary>
public sealed record ReadLimits
{
    public static readonly ReadLimits Default = new();

    /// <summary>Longest row in characters, quoted line breaks included.</summary>
    public int MaxLineLength { get; init; } = 64 * 1024;

    /// <summary>Longest cell in characters.</summary>
    public int MaxCellLength { get; init; } = 4 * 1024;

    public int MaxColumns { get; init; } = 512;

    /// <summary>Faults described in the outcome; all are counted.</summary>
    public int MaxFaults { get; init; } = 20;

    /// <summary>Parked rows described in the outcome; all are counted.</summary>
    public int MaxParkedRows { get; init; } = 1000;
}
