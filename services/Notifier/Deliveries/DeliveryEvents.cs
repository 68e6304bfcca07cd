namespace LabPipeline.Notifier.Deliveries;

/// <summary>What a delivery tells.</summary>
public static class DeliveryEvents
{
    public const string Raised = "raised";

    public const string Cleared = "cleared";

    /// <summary>Another channel has not been reached with the raising.</summary>
    public const string Undelivered = "undelivered";

    /// <summary>The alert is still open and nobody has acknowledged it.</summary>
    public const string Reminder = "reminder";
}
