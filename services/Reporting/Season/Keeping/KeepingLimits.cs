using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.Guides;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Reporting.Season.Keeping;

/// <summary>The limits of a trial: its own where the plan states one, guides for the rest.</summary>
internal static class KeepingLimits
{
    public static IReadOnlyList<KeepingLimit> Of(SeasonData data)
    {
        KeepingLimit[] defaults =
        [
            Guide(ResponseCatalogue.Glucose, GuideLimits.GlucoseWatch),
            Guide(ResponseCatalogue.Glucose, GuideLimits.GlucoseAct),
            new(ResponseCatalogue.HunterL, data.Trial.DarkBelowHunterL, false, "the trial plan's limit of dark chips"),
            Guide(ResponseCatalogue.Undesirable, GuideLimits.TotalUndesirable),
        ];
        return [.. defaults.GroupBy(limit => limit.Response).SelectMany(group => Own(data, group.First()) is { } own ? [own] : group.ToArray())];
    }

    /// <summary>A limit the trial has set itself takes the place of plan and guides.</summary>
    private static KeepingLimit? Own(SeasonData data, KeepingLimit limit) =>
        data.Thresholds.FirstOrDefault(one => one.QuantityId == limit.Response.Quantity.Id && one.Kind == (limit.HighIsBad ? ThresholdKinds.High : ThresholdKinds.Low)) is { } own
            ? limit with { Value = own.Value, Source = $"set for this trial by {own.SetBy}: {own.Why}" }
            : null;

    /// <summary>"Glucose at most 0.1 mg/g fresh weight".</summary>
    public static string Describe(KeepingLimit limit) =>
        string.Create(CultureInfo.InvariantCulture, $"{limit.Response.Title} {(limit.HighIsBad ? "at most" : "at least")} {limit.Value:0.###} {limit.Response.Unit}").TrimEnd();

    private static KeepingLimit Guide(Response response, GuideLimit guide) => new(
        response, guide.Value, guide.Bound is GuideBound.AtMost or GuideBound.Below, $"guide value, {guide.Source}, {Words(guide.Evidence)}");

    private static string Words(Evidence evidence) => evidence switch
    {
        Evidence.Seen => "source read",
        Evidence.FromMemory => "recalled, not verified",
        _ => "common practice, no source",
    };
}
