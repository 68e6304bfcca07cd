namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>
/// The general linear model with one error: y = intercept + terms + e, e independent with one variance. Fitted by Householder QR of
/// the response centred first, so a large offset costs no digits. Unbalanced data and missing plots need nothing special.
/// </summary>
public static class LinearModel
{
    /// <param name="data">Response and variables; a missing plot is a row left out.</param>
    /// <param name="terms">Terms after the intercept, in the order in which they may claim variation; blocks first.</param>
    /// <exception cref="ArgumentException">A term names an unknown variable or stands twice.</exception>
    public static LinearFit Fit(ModelData data, params IReadOnlyList<Term> terms) =>
        new(data, ModelMatrix.Build(data, terms, Coding.SumToZero));
}
