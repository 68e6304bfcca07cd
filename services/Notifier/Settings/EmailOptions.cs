namespace LabPipeline.Notifier.Settings;

/// <summary>One person or role who gets e-mail.</summary>
public sealed class EmailOptions : ChannelOptions
{
    /// <summary>The one address of this channel; a role of several people is several channels or a list at the mail server.</summary>
    public string To { get; set; } = "";
}
