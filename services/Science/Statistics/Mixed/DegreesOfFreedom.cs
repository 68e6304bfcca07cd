namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>How the denominator degrees of freedom of a fixed effect are found.</summary>
public enum DegreesOfFreedom
{
    /// <summary>
    /// Matches the mean and variance of the Wald F to a scaled F, and enlarges standard errors for the variances being estimates.
    /// Kenward and Roger 1997 (from memory), exact in balanced designs; second derivatives of the covariance (only the exponential
    /// structures have any) are left out.
    /// </summary>
    KenwardRoger,

    /// <summary>Matches the variance of each standard error to a chi-squared, no enlargement. Fai and Cornelius 1996 for several df (from memory).</summary>
    Satterthwaite,
}
