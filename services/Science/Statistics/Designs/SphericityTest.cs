namespace LabPipeline.Science.Statistics.Designs;

/// <summary>How far the pulls of one plot are from equal variances of all differences, and what that costs the F tests.</summary>
/// <param name="GreenhouseGeisser">Epsilon, between 1 / (pulls - 1) and 1; multiplies both df of within-plot tests.</param>
/// <param name="HuynhFeldt">The less cautious epsilon, cut at 1.</param>
/// <param name="MauchlyW">Between 0 and 1; 1 is perfect sphericity.</param>
/// <param name="MauchlyP">Probability of a W this small under sphericity; null where W has no test.</param>
/// <param name="Df">Degrees of freedom of the covariance matrix between pulls.</param>
/// <param name="Pulls">Number of pulls.</param>
public sealed record SphericityTest(double GreenhouseGeisser, double HuynhFeldt, double MauchlyW, double? MauchlyP, int Df, int Pulls);
