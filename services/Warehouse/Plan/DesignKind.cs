namespace LabPipeline.Warehouse.Plan;

/// <summary>How treatments were laid out in the field.</summary>
public enum DesignKind
{
    /// <summary>Randomised complete blocks, one factor.</summary>
    Rcbd,

    /// <summary>Randomised complete blocks, two or more crossed factors.</summary>
    FactorialRcbd,

    /// <summary>One factor on main plots, the others within them.</summary>
    SplitPlot,
}
