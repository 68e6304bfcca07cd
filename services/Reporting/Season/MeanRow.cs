namespace LabPipeline.Reporting.Season;

/// <summary>One mean of a table.</summary>
/// <param name="Label">Levels joined by a colon.</param>
/// <param name="N">Plots behind it.</param>
/// <param name="OnScale">Adjusted mean on the scale of analysis; null where it cannot be estimated.</param>
/// <param name="Back">The same in the unit of the response.</param>
/// <param name="Letters">Tukey letters; empty where pairs were not compared.</param>
internal sealed record MeanRow(string Label, int N, double? OnScale, double? Back, string Letters);
