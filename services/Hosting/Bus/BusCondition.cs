namespace LabPipeline.Hosting.Bus;

/// <summary>How the bus does.</summary>
/// <param name="IsUp">Whether messages come and go.</param>
/// <param name="Reason">Why not, for people; empty when they do.</param>
/// <param name="Since">Since when.</param>
/// <param name="Rebuilds">How often the bus was given up and built anew since the process started.</param>
public sealed record BusCondition(bool IsUp, string Reason, DateTimeOffset Since, int Rebuilds);
