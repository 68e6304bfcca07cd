using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Rules;

/// <summary>A control held against the limits in force when it was measured.</summary>
/// <param name="Point">The measurement.</param>
/// <param name="Limits">What it was held against.</param>
/// <param name="Failure">The rule it broke; null when it passed.</param>
public sealed record ControlVerdict(ControlPoint Point, ControlLimitRow Limits, string? Failure)
{
    public bool Passed => Failure is null;
}
