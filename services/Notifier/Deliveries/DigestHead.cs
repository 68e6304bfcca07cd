namespace LabPipeline.Notifier.Deliveries;

/// <summary>The deliveries one digest carries, in numbers.</summary>
public sealed record DigestHead
{
    public int Total { get; init; }

    public int Blocks { get; init; }

    public int FirstAlertId { get; init; }

    public int LastAlertId { get; init; }

    public DateTimeOffset DueAt { get; init; }

    public int Attempts { get; init; }
}
