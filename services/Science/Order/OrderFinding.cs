using System.Globalization;

namespace LabPipeline.Science.Order;

/// <summary>One difference between the planned and the reported order. Places count from 1.</summary>
/// <param name="Pattern">What it is.</param>
/// <param name="FirstPlace">First reported place it concerns.</param>
/// <param name="LastPlace">Last reported place it concerns; the same as the first when it concerns one sample.</param>
/// <param name="By">Places the sample at the first place stands behind its planned one, negative when before it; 0 for a foreign or repeated sample.</param>
/// <param name="Found">The sample reported at the first place.</param>
/// <param name="Planned">The sample planned for the first place; null beyond the end of the order.</param>
public sealed record OrderFinding(OrderPattern Pattern, int FirstPlace, int LastPlace, int By, string Found, string? Planned)
{
    /// <summary>One sentence for the person at the bench.</summary>
    public string Explanation => Pattern switch
    {
        OrderPattern.Shifted => Text(
            $"Places {FirstPlace} to {LastPlace}: every sample stands {Places(By)} its planned one ({Found} at place {FirstPlace}, planned for {FirstPlace - By}): the rack is shifted, or a place was skipped."),
        OrderPattern.TrayRotated => Text(
            $"Places {FirstPlace} to {LastPlace} run backwards ({Found} at place {FirstPlace}, planned for {FirstPlace - By}): the tray is rotated by 180°."),
        OrderPattern.NeighboursSwapped => Text($"Places {FirstPlace} and {LastPlace}: the neighbours {Found} and {Planned} are swapped."),
        OrderPattern.Exchanged => Text($"Places {FirstPlace} and {LastPlace}: {Found} and {Planned} stand in each other's place."),
        OrderPattern.Misplaced => Text($"Place {FirstPlace}: {Found} stands here, planned for place {FirstPlace - By}; {PlannedHere}."),
        OrderPattern.Foreign => Text($"Place {FirstPlace}: {Found} is not in this order; {PlannedHere}."),
        _ => Text($"Place {FirstPlace}: {Found} again; {PlannedHere}."),
    };

    private string PlannedHere => Planned is null ? "nothing was planned here" : $"{Planned} was planned here";

    private static string Places(int by) => Text($"{Math.Abs(by)} {(Math.Abs(by) == 1 ? "place" : "places")} {(by < 0 ? "before" : "behind")}");

    private static string Text(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
