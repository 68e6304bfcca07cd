namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>A planned contrast, estimated and tested.</summary>
/// <param name="Label">The question in words.</param>
/// <param name="Estimate">Σ cᵢ × meanᵢ, in the unit of the response times that of the coefficients.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="Df">Degrees of freedom of that standard error.</param>
/// <param name="T">Estimate / StandardError; its square is the F of the contrast.</param>
/// <param name="P">Two-sided p value, for this one question.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
public sealed record ContrastEstimate(
    string Label, double Estimate, double StandardError, double Df, double T, double P, double Low, double High)
{
    /// <summary>The F ratio of the contrast on 1 and Df degrees of freedom.</summary>
    public double F => T * T;
}
