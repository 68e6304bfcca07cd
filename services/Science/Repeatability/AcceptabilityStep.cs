namespace LabPipeline.Science.Repeatability;

/// <summary>One comparison of the acceptability check.</summary>
/// <param name="Results">Number of results compared.</param>
/// <param name="Range">Largest minus smallest of them, in their unit.</param>
/// <param name="Factor">Critical range factor f(n).</param>
/// <param name="CriticalRange">f(n) x s_r, in the unit of the results.</param>
public sealed record AcceptabilityStep(int Results, decimal Range, decimal Factor, decimal CriticalRange)
{
    /// <summary>Whether the results agree; a range exactly equal to the critical range agrees.</summary>
    public bool Agrees => Range <= CriticalRange;
}
