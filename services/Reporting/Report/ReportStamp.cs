namespace LabPipeline.Reporting.Report;

/// <summary>What distinguishes one printing of a report from another.</summary>
/// <param name="Version">Number of the locked report; null for a draft.</param>
/// <param name="LockedBy">Who locked it; null for a draft.</param>
/// <param name="Software">Name and version of the program that computed it.</param>
internal sealed record ReportStamp(int? Version, string? LockedBy, string Software);
