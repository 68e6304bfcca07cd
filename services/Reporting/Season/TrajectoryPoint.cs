namespace LabPipeline.Reporting.Season;

/// <summary>A mean at one pull.</summary>
/// <param name="PullNo">The pull.</param>
/// <param name="Day">Days after harvest.</param>
/// <param name="Mean">On the scale of analysis.</param>
/// <param name="StandardError">Of the mean, blocks included.</param>
/// <param name="Df">Its degrees of freedom.</param>
internal sealed record TrajectoryPoint(int PullNo, int Day, double Mean, double StandardError, double Df);
