namespace LabPipeline.Warehouse.Plan;

/// <summary>What became of an offered bench order.</summary>
public enum BenchOrderState
{
    /// <summary>It is kept and in effect.</summary>
    Kept,

    /// <summary>It is the one in effect already; nothing was changed.</summary>
    Unchanged,

    /// <summary>Another one is in effect and no reason was given to draw anew; nothing was changed.</summary>
    NeedsReason,
}
