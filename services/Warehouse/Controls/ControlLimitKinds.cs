namespace LabPipeline.Warehouse.Controls;

/// <summary>Where limits of a control come from.</summary>
public static class ControlLimitKinds
{
    /// <summary>A stated value and its tolerance, until the laboratory has runs enough.</summary>
    public const string Target = "target";

    /// <summary>Computed from runs and kept from then on.</summary>
    public const string Frozen = "frozen";
}
