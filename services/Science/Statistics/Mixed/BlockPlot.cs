namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>A plot within a block of fixed effects.</summary>
/// <param name="Subject">The plot.</param>
/// <param name="Number">Its number among all plots.</param>
/// <param name="Places">Where its columns stand in the block: units before effects.</param>
internal sealed record BlockPlot(Subject Subject, int Number, int[] Places);
