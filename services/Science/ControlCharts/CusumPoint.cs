namespace LabPipeline.Science.ControlCharts;

/// <summary>A point of a tabular CUSUM.</summary>
/// <param name="High">Sum of exceedances above target, zero or more.</param>
/// <param name="Low">Sum of shortfalls below target, zero or more.</param>
/// <param name="IsOut">Whether either is larger than the decision interval; equal is inside.</param>
public sealed record CusumPoint(decimal High, decimal Low, bool IsOut);
