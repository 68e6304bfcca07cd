namespace LabPipeline.Notifier.Channels;

/// <summary>How an attempt to send ended, and why.</summary>
public sealed record SendOutcome
{
    public required SendResult Result { get; init; }

    public string Reason { get; init; } = "";

    /// <summary>How long the target asked to be left alone.</summary>
    public TimeSpan? RetryAfter { get; init; }

    public static SendOutcome Sent { get; } = new() { Result = SendResult.Sent };

    public static SendOutcome TryLater(string reason, TimeSpan? retryAfter = null) =>
        new() { Result = SendResult.TryLater, Reason = reason, RetryAfter = retryAfter };

    public static SendOutcome Refused(string reason) => new() { Result = SendResult.Refused, Reason = reason };

    public static SendOutcome Gone(string reason) => new() { Result = SendResult.Gone, Reason = reason };
}
