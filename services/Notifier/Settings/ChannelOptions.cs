namespace LabPipeline.Notifier.Settings;

/// <summary>What every channel to a person or a program can be told.</summary>
public abstract class ChannelOptions
{
    public const string NoLevel = "none";

    /// <summary>Levels to be told: any of block, hold, note, or <c>none</c> for a channel that only gets what escalates. Empty means block and hold.</summary>
    public IList<string> Levels { get; } = [];

    /// <summary>Quiet hours in <see cref="NotifierOptions.TimeZone"/>. Default none.</summary>
    public QuietHoursOptions? Quiet { get; set; }

    /// <summary>Local time such as <c>16:30</c> at which whatever does not block is told in one message a day. Default: every alert at once, by itself.</summary>
    public string DigestAt { get; set; } = "";

    /// <summary>Tells an open alert of level block or hold again after this time, until somebody acknowledges it. Default never; at least 10 minutes.</summary>
    public TimeSpan? RemindAfter { get; set; }

    /// <summary>Tells this channel of an alert of level block or hold it does not otherwise get, when nobody has acknowledged it for this time. Default never; at least 10 minutes.</summary>
    public TimeSpan? EscalateAfter { get; set; }
}
