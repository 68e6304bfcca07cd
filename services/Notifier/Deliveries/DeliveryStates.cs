namespace LabPipeline.Notifier.Deliveries;

/// <summary>A delivery is pending until it ends as one of the other three.</summary>
public static class DeliveryStates
{
    public const string Pending = "pending";

    public const string Delivered = "delivered";

    /// <summary>Not sent on purpose; the reason stands beside it.</summary>
    public const string HeldBack = "held back";

    public const string Failed = "failed";
}
