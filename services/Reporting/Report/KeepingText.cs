using LabPipeline.Reporting.Season.Keeping;

namespace LabPipeline.Reporting.Report;

/// <summary>Keeping times in words; what is censored says so.</summary>
internal static class KeepingText
{
    public static string Day(KeepingTime time) => time.State switch
    {
        KeepingState.NotReached => $"> {time.LastDay}",
        KeepingState.OutFromTheStart => $"≤ {time.FirstDay}",
        _ => NumberText.Fixed(time.Day, 0) + (time.CameBack ? "*" : ""),
    };

    public static string Interval(KeepingTime time)
    {
        var from = time.Earliest is not { } earliest ? $"≤ {time.FirstDay}" : earliest >= time.LastDay ? $"> {time.LastDay}" : NumberText.Fixed(earliest, 0);
        var to = time.Latest is { } latest ? NumberText.Fixed(latest, 0) : $"> {time.LastDay}";
        return from == to ? from : $"{from} to {to}";
    }
}
