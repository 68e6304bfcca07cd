namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The mean of one plot at one pull: the unit of analysis. A missing plot is left out, never zero.</summary>
/// <param name="Block">Block.</param>
/// <param name="Plot">Plot number, unique in the trial.</param>
/// <param name="Levels">Level of every treatment factor by its name.</param>
/// <param name="Value">As measured, finite.</param>
/// <param name="MainPlot">Main plot, unique in the trial; needed in a split-plot.</param>
/// <param name="Pull">Pull; needed where the design names pulls.</param>
public sealed record PlotMean(string Block, string Plot, IReadOnlyDictionary<string, string> Levels, double Value, string? MainPlot = null, string? Pull = null);
