namespace LabPipeline.Notifier.Storms;

/// <summary>How much a person or a program wants to hear at once.</summary>
public sealed record StormLimits
{
    /// <summary>Messages told one by one within <see cref="Window"/>; a quarter of them is kept for what blocks.</summary>
    public int Immediate { get; init; } = 20;

    public TimeSpan Window { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>How long the rest gathers before it goes as one digest, at most one in a window.</summary>
    public TimeSpan GatherFor { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>Messages of the window that alerts of other levels may use.</summary>
    public int ImmediateForOthers => Immediate - (Immediate / 4);
}
