namespace LabPipeline.Science.Statistics.Designs;

/// <summary>How treatments were assigned to plots.</summary>
public enum TrialLayout
{
    /// <summary>Every treatment combination once in every block, at random; several factors make it factorial.</summary>
    RandomisedBlocks,

    /// <summary>Some factors assigned to main plots within blocks, the others to plots within main plots.</summary>
    SplitPlot,
}
