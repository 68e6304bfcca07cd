namespace LabPipeline.Warehouse.Channels;

/// <summary>How far a test of a channel has come.</summary>
public static class ChannelTestStates
{
    /// <summary>No notifier has sent it yet.</summary>
    public const string Waiting = "waiting";

    /// <summary>The channel's server or file took it.</summary>
    public const string Delivered = "delivered";

    /// <summary>The channel did not take it; a test is sent once.</summary>
    public const string Failed = "failed";
}
