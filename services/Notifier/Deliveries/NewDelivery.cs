namespace LabPipeline.Notifier.Deliveries;

/// <summary>A delivery to be written down before anything is sent.</summary>
public sealed record NewDelivery
{
    public required int AlertId { get; init; }

    public required int TimesRaised { get; init; }

    public required string Event { get; init; }

    public required string Channel { get; init; }

    public required int Urgency { get; init; }

    public required string State { get; init; }

    public string? Reason { get; init; }

    public required DateTimeOffset DueAt { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }
}
