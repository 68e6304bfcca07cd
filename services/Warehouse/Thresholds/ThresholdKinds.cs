namespace LabPipeline.Warehouse.Thresholds;

/// <summary>What a threshold limits.</summary>
public static class ThresholdKinds
{
    /// <summary>Lowest value that is not told, the value itself included.</summary>
    public const string Low = "low";

    /// <summary>Highest value that is not told, the value itself included.</summary>
    public const string High = "high";

    /// <summary>Shift of a weighing session against the others.</summary>
    public const string Shift = "shift";

    public static readonly IReadOnlyList<string> All = [Low, High, Shift];
}
