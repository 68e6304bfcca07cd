namespace LabPipeline.Notifier.Settings;

/// <summary>Hours of the local day in which only alerts of level block are told.</summary>
public sealed class QuietHoursOptions
{
    /// <summary>First quiet minute, such as <c>20:00</c>.</summary>
    public string From { get; set; } = "";

    /// <summary>First minute that is no longer quiet, such as <c>06:30</c>.</summary>
    public string To { get; set; } = "";
}
