namespace LabPipeline.Reporting.Planning;

/// <summary>The error that one pull of an earlier trial showed.</summary>
/// <param name="PullNo">The pull.</param>
/// <param name="Error">Which error: "Residual", or a stratum of a split-plot.</param>
/// <param name="Variance">Squared, on the scale of analysis; above 0.</param>
/// <param name="Df">Degrees of freedom it was estimated with.</param>
/// <param name="Plots">Plots measured.</param>
/// <param name="Censored">Plots whose value was a quantitation limit: the variance is too small then.</param>
public sealed record SeasonVariance(int PullNo, string Error, double Variance, double Df, int Plots, int Censored);
