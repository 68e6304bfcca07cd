namespace LabPipeline.Notifier.Storms;

/// <summary>What a channel may be told now.</summary>
public enum StormVerdict
{
    /// <summary>The most urgent waiting delivery, by itself.</summary>
    OneByOne,

    /// <summary>Only what blocks, by itself.</summary>
    BlockOnly,

    /// <summary>Everything that waits, in one message.</summary>
    Digest,

    /// <summary>The limit is reached; the rest gathers.</summary>
    Wait,
}
