namespace LabPipeline.Notifier.Settings;

/// <summary>What every channel to a person or a program can be told.</summary>
public abstract class ChannelOptions
{
    /// <summary>Levels to be told: any of block, hold, note. Empty means block and hold.</summary>
    public IList<string> Levels { get; } = [];

    /// <summary>Quiet hours in <see cref="NotifierOptions.TimeZone"/>. Default none.</summary>
    public QuietHoursOptions? Quiet { get; set; }
}
