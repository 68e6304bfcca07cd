namespace LabPipeline.Warehouse.Alerts;

/// <summary>Where an alert stands, as the warehouse writes it.</summary>
public static class AlertStates
{
    /// <summary>The cause is there.</summary>
    public const string Open = "open";

    /// <summary>The cause went away.</summary>
    public const string Cleared = "cleared";

    /// <summary>A person decided, with a reason; stays so while the facts stay.</summary>
    public const string Settled = "settled";
}
