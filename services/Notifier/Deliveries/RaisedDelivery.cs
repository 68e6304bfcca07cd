namespace LabPipeline.Notifier.Deliveries;

/// <summary>How the telling of a raising stands on one channel.</summary>
public sealed record RaisedDelivery
{
    public int DeliveryId { get; init; }

    public string Channel { get; init; } = "";

    public int Urgency { get; init; }

    public string State { get; init; } = "";

    public int Attempts { get; init; }
}
