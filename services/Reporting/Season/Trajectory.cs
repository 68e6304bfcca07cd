namespace LabPipeline.Reporting.Season;

/// <summary>A mean followed through the pulls, on the scale of analysis.</summary>
/// <param name="Label">Clone, or treatment combination.</param>
/// <param name="Points">In the order of days; pulls without an estimate are left out.</param>
internal sealed record Trajectory(string Label, IReadOnlyList<TrajectoryPoint> Points);
