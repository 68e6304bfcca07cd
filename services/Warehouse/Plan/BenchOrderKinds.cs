namespace LabPipeline.Warehouse.Plan;

/// <summary>The work that samples of a pull are put in order for.</summary>
public static class BenchOrderKinds
{
    public const string Analysis = "analysis";
    public const string Frying = "frying";

    public static IReadOnlyList<string> All { get; } = [Analysis, Frying];
}
