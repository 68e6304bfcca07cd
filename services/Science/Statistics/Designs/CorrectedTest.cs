namespace LabPipeline.Science.Statistics.Designs;

/// <summary>A within-plot test with its degrees of freedom reduced for unequal covariances between pulls.</summary>
/// <param name="Term">The term of the strata table.</param>
/// <param name="GreenhouseGeisserP">The cautious probability.</param>
/// <param name="HuynhFeldtP">The less cautious one.</param>
public sealed record CorrectedTest(string Term, double GreenhouseGeisserP, double HuynhFeldtP);
