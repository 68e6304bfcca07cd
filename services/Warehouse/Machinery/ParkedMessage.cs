namespace LabPipeline.Warehouse.Machinery;

/// <summary>A message that could not be handled and waits for a person to look at its reason and replay it.</summary>
public sealed record ParkedMessage
{
    public const string UnknownType = "(unknown)";

    private const int LongestReason = 1000;

    private readonly string _reason = "";

    public int ParkedId { get; init; }

    public Guid MessageId { get; init; }

    /// <summary>The queue it was taken from; also the consumer's name in the inbox.</summary>
    public string Endpoint { get; init; } = "";

    /// <summary>Full name of the contract, or <see cref="UnknownType"/>.</summary>
    public string Type { get; init; } = "";

    /// <summary>The message itself as JSON; of an unknown type whatever was received.</summary>
    public string Body { get; init; } = "";

    public string Reason
    {
        get => _reason;
        init => _reason = value.Length <= LongestReason ? value : string.Concat(value.AsSpan(0, LongestReason - 1), "…");
    }

    /// <summary>How often it has been parked: more than once when a replay failed.</summary>
    public int TimesParked { get; init; }

    public DateTimeOffset ParkedAt { get; init; }
}
