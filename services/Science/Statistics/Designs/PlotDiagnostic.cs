namespace LabPipeline.Science.Statistics.Designs;

/// <summary>What a plot contributes to the checks of a fit, on the scale of analysis.</summary>
/// <param name="Plot">Plot number.</param>
/// <param name="Fitted">Value expected by the model.</param>
/// <param name="Residual">Observed minus fitted.</param>
/// <param name="Leverage">From 0 to 1; at 1 the plot determines its own fitted value.</param>
/// <param name="StudentizedResidual">t of the plot as a single outlier; null where it determines its own fitted value.</param>
public sealed record PlotDiagnostic(string Plot, double Fitted, double Residual, double Leverage, double? StudentizedResidual);
