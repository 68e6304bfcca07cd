using LabPipeline.Notifier.Messages;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Claimed deliveries that are sent together: the notices to tell and the rows to mark.</summary>
public sealed record Parcel
{
    public required IReadOnlyList<Notice> Notices { get; init; }

    /// <summary>The rows, unless a digest holds them together.</summary>
    public IReadOnlyList<int> DeliveryIds { get; init; } = [];

    public string? DigestId { get; init; }

    /// <summary>Attempts of its oldest row, this one included.</summary>
    public required int Attempts { get; init; }

    /// <summary>Since when its oldest row has been owed.</summary>
    public required DateTimeOffset DueAt { get; init; }

    /// <summary>Rows it carries.</summary>
    public required int Count { get; init; }
}
