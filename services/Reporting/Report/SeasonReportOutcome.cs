namespace LabPipeline.Reporting.Report;

/// <summary>A season report, or why there is none.</summary>
/// <param name="State">How it ended.</param>
/// <param name="Page">The page; empty when nothing was made.</param>
/// <param name="Version">Number of the locked report; null for a draft.</param>
/// <param name="Explanation">What is missing or differs, and what to do; empty when all is well.</param>
public sealed record SeasonReportOutcome(SeasonReportState State, string Page, int? Version, string Explanation);
