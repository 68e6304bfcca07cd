namespace LabPipeline.Warehouse.Plan;

/// <summary>What loading a plan did.</summary>
public enum PlanLoadState
{
    /// <summary>The trial is new.</summary>
    Loaded,

    /// <summary>The trial was known; what the document adds or corrects was taken over.</summary>
    Extended,

    /// <summary>The warehouse holds this plan already.</summary>
    Unchanged,

    /// <summary>Loading would rewrite history; nothing was changed.</summary>
    Refused,
}
