namespace LabPipeline.Notifier.Routing;

/// <summary>How an alert stands in the warehouse while one of its messages is handled.</summary>
public sealed record AlertStanding
{
    public string Level { get; init; } = "";

    public string State { get; init; } = "";

    public int TimesRaised { get; init; }

    /// <summary>Whether the raising counted <paramref name="timesRaised"/> is over already.</summary>
    public bool IsOver(int timesRaised) => State != "open" || TimesRaised > timesRaised;
}
