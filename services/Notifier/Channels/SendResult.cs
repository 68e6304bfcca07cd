namespace LabPipeline.Notifier.Channels;

/// <summary>How an attempt to send ended.</summary>
public enum SendResult
{
    Sent,

    /// <summary>It may go another time, or it went and no answer came.</summary>
    TryLater,

    /// <summary>This message will never be taken.</summary>
    Refused,

    /// <summary>The target wants no messages at all any more.</summary>
    Gone,
}
