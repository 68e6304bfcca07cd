using LabPipeline.Station.Demo;
using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Station.Tests.Demo;

/// <summary>What was planted is found, each error of the bench by a rule, and nothing else stops the work.</summary>
public sealed class DemoAlertsTests(TroubledSeason season, ITestOutputHelper output) : IClassFixture<TroubledSeason>
{
    /// <summary>The errors of a bench day as the laboratory's brief lists them, and the planted troubles that stand for each.</summary>
    private static readonly (string Error, string[] Troubles)[] Errors =
    [
        ("mis-scan, typed id", ["mistyped barcode", "label of another trial"]),
        ("swapped halves or samples", ["samples exchanged", "free and total glucose swapped"]),
        ("position shifted by one", ["rack shifted by one", "tray rotated"]),
        ("wrong dilution factor", ["dilution slip"]),
        ("volume added against made up", ["volume entered twice"]),
        ("fresh mass wrong or 0", ["no fresh mass"]),
        ("balance or sling not tared", ["sling not tared"]),
        ("analyser drift", ["analyser drift"]),
        ("membrane or enzyme ageing", ["worn enzyme"]),
        ("tile drift, dirty port", ["tile drift", "chip read over an open port"]),
        ("duplicates disagree", ["glucose disagrees, high", "glucose disagrees, low", "sucrose disagrees"]),
        ("forgotten or late pull", ["forgotten block", "late block", "short of tubers", "instrument silent"]),
        ("two pulls mixed", ["two pulls mixed"]),
        ("same file exported twice", ["copy under another name", "honest re-export"]),
        ("edited re-export", ["edited re-export"]),
        ("file still being written", ["half-written file"]),
        ("decimal comma, thousands mark", ["decimal commas"]),
        ("unit changed on the instrument", ["unit changed"]),
        ("time zone, clock change, wrong clock", ["slow clock"]),
        ("date order", ["date order"]),
        ("spreadsheet damage", ["spreadsheet damage"]),
        ("placeholder values", ["placeholder"]),
        ("scorer drift", ["stern scorer"]),
        ("oil ageing, cold oil", ["cold oil"]),
    ];

    private DemoScenario Scenario => season.Scenario;

    [Fact]
    public void Errors_OfTheBench_AreEachCaughtByARule()
    {
        var findings = DemoFindings.Match(Scenario.Troubles, season.Alerts, season.Arrivals).ToDictionary(finding => finding.Trouble.Name);
        foreach (var (error, troubles) in Errors)
        {
            output.WriteLine($"{error,-40} {string.Join("; ", troubles.Select(name => findings[name].By))}");
        }

        Assert.Equal(24, Errors.Length);
        Assert.Empty(Errors.SelectMany(error => error.Troubles).Where(name => !findings[name].IsFound).Select(name => $"{name}: {findings[name].By}, {findings[name].Trouble.Where}"));
    }

    [Fact]
    public void Season_TakenAndJudged_AlertsWhatWasPlanted()
    {
        var missed = Scenario.Troubles
            .SelectMany(trouble => trouble.AlsoRules.Prepend(trouble.Rule).OfType<string>().Select(rule => (trouble, rule)))
            .Where(planted => !season.Alerts.Any(alert => alert.RuleName == planted.rule && (planted.rule != planted.trouble.Rule || Speaks(alert, planted.trouble))))
            .Select(planted => $"{planted.trouble.Name}: {planted.rule}, {planted.trouble.Where}");

        Assert.False(missed.Any(), string.Join(Environment.NewLine, missed));
    }

    [Fact]
    public void Season_TakenAndJudged_AlertsNothingElse()
    {
        var surplus = season.Alerts.Where(alert => !Scenario.Troubles.Any(trouble => trouble.Rule == alert.RuleName && Speaks(alert, trouble)))
            .Where(alert => !Scenario.Troubles.Any(trouble => trouble.AlsoRules.Contains(alert.RuleName)))
            .Select(alert => $"{alert.Level} {alert.RuleName}: {alert.Headline}");
        var expectedRules = Scenario.Troubles.SelectMany(trouble => trouble.AlsoRules.Prepend(trouble.Rule).OfType<string>()).ToList();

        Assert.False(surplus.Any(), string.Join(Environment.NewLine, surplus));
        Assert.InRange(season.Alerts.Count(alert => alert.Level != AlertLevels.Note), 1, expectedRules.Count + 1);
    }

    private static bool Speaks(Alert alert, PlantedTrouble trouble)
    {
        var text = $"{alert.Headline} {alert.Scope} {alert.Facts}";
        return trouble.Where.Split(", ").All(part => text.Contains(part, StringComparison.Ordinal));
    }
}
