namespace LabPipeline.Notifier.Routing;

/// <summary>What a clearing means to a channel.</summary>
public enum ClearingStep
{
    /// <summary>The channel never heard of the alert and will not now.</summary>
    Nothing,

    /// <summary>The raising still waits untried: neither is told.</summary>
    HoldBackBoth,

    /// <summary>The raising was told, or may have been.</summary>
    Tell,
}
