namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>How a factor of k levels becomes k - 1 columns.</summary>
internal enum Coding
{
    /// <summary>Effects that sum to zero: marginal tests of main effects then mean what they say under interactions.</summary>
    SumToZero,

    /// <summary>Differences from the first level: sparse, and the coding behind most published REML log-likelihoods.</summary>
    Reference,
}
