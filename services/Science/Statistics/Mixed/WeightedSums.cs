using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>Sums of products of the fixed effects X and the random units freed of them, Z0, under one weight of the rows.</summary>
/// <param name="Effects">X'WX of each block.</param>
/// <param name="Across">X'WZ0 of each block: its effects by its units.</param>
/// <param name="Units">Z0'WZ0.</param>
internal sealed record WeightedSums(Matrix[] Effects, Matrix[] Across, Matrix Units);
