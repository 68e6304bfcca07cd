namespace LabPipeline.Notifier.Deliveries;

/// <summary>A delivery whose time has come, with the alert it speaks of.</summary>
public sealed record DueDelivery
{
    public int DeliveryId { get; init; }

    public int AlertId { get; init; }

    public int TimesRaised { get; init; }

    public string Event { get; init; } = "";

    public string Channel { get; init; } = "";

    public int Attempts { get; init; }

    public DateTimeOffset DueAt { get; init; }

    public string Fingerprint { get; init; } = "";

    public string Level { get; init; } = "";

    public string Rule { get; init; } = "";

    public string? TrialCode { get; init; }

    public int? PullNo { get; init; }

    public string? Barcode { get; init; }

    public DateTimeOffset OpenedAt { get; init; }

    public string Headline { get; init; } = "";

    public string Advice { get; init; } = "";

    /// <summary>The alert's facts as JSON, cut one character above <see cref="Messages.NoticeText.LongestFacts"/>.</summary>
    public string Facts { get; init; } = "";

    /// <summary>For an undelivered alert: the channels that were not reached; null when they have been reached since.</summary>
    public string? MissingOn { get; init; }

    /// <summary>Whether the alert is open and nobody has acknowledged it.</summary>
    public bool WaitsForSomebody { get; init; }

    /// <summary>Why there is nothing left to tell; null when there is.</summary>
    public string? Moot => Event switch
    {
        DeliveryEvents.Undelivered when MissingOn is null => "the other channels were reached before this was told",
        DeliveryEvents.Reminder when !WaitsForSomebody => "somebody saw to it before this was told",
        _ => null,
    };
}
