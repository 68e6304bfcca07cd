namespace LabPipeline.Warehouse.Plan;

/// <summary>A treatment factor with its levels in the order reports list them.</summary>
/// <remarks>
/// <c>Unit</c>: set for a quantitative factor, whose levels are numbers in that unit; null for a named one.
/// </remarks>
public sealed record TrialFactor(string Name, string? Unit, IReadOnlyList<string> Levels)
{
    /// <summary>A level with what it is a level of: "nitrogen 200 kg/ha", "vine kill early".</summary>
    public string Describe(string level) => Unit is null ? $"{Name} {level}" : $"{Name} {level} {Unit}";
}
