using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Station.Tests.Demo;

/// <summary>A rule that cries where nothing is wrong is soon not heard: nothing stops the work of a clean season.</summary>
public sealed class CleanSeasonTests(CleanSeason season) : IClassFixture<CleanSeason>
{
    [Fact]
    public void CleanSeason_TakenAndJudged_HasNoAlertThatStopsTheWork() =>
        Assert.Empty(season.Alerts.Where(alert => alert.Level != AlertLevels.Note).Select(alert => $"{alert.Level} {alert.RuleName}: {alert.Headline}"));

    [Fact]
    public void CleanSeason_TakenAndJudged_HasNoNoteEither() =>
        Assert.Empty(season.Alerts.Select(alert => $"{alert.Level} {alert.RuleName}: {alert.Headline}"));

    [Fact]
    public void CleanSeason_Arrivals_AreAllStored()
    {
        Assert.Empty(season.Scenario.Troubles);
        Assert.Equal(["stored"], season.Arrivals.Select(arrival => arrival.State).Distinct());
        Assert.Equal(8 * 4 * 7, season.Arrivals.Count);
    }
}
