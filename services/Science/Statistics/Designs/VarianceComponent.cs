namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The variance that one size of unit adds.</summary>
/// <param name="Unit">Name of the unit: "block", "block:irrigation", "Within".</param>
/// <param name="Variance">Squared units of the response; a method-of-moments estimate can be negative and is reported as found.</param>
/// <param name="Df">Degrees of freedom of the stratum it was taken from; null for a REML estimate.</param>
public sealed record VarianceComponent(string Unit, double Variance, double? Df);
