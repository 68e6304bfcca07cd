using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Tests.Rules;

/// <summary>Rules about a pull: nothing while files may still come, one alert for the pull afterwards. Dates are those of the trial's zone.</summary>
public sealed class PullRuleTests
{
    private static readonly RuleLimits Limits = new();
    private static readonly DateOnly Due = new(2026, 1, 12);
    private static readonly DateOnly Closes = new(2026, 1, 16);

    [Theory]
    [InlineData(13, null)]
    [InlineData(14, FindingLevel.Hold)]
    [InlineData(16, FindingLevel.Hold)]
    [InlineData(17, FindingLevel.Block)]
    public void MissingPull_ByLocalDate_IsHeldAfterTheGraceAndBlockedAfterTheWindow(int day, FindingLevel? level)
    {
        var findings = new MissingPullRule(Limits).Evaluate(Pull(day, Nothing("101", "B1"), Nothing("102", "B2"))).ToList();

        Assert.Equal(level, findings.SingleOrDefault()?.Level);
    }

    [Fact]
    public void MissingPull_ListsPlotsByBayInOneFinding()
    {
        var finding = Assert.Single(new MissingPullRule(Limits).Evaluate(Pull(17, Nothing("103", "B2"), Nothing("102", "B1"), Nothing("101", "B1"))));

        Assert.Equal("missing pull|NT26/3|whole pull", finding.Fingerprint);
        Assert.Contains("bay B1: 101, 102; bay B2: 103", finding.Headline, StringComparison.Ordinal);
        Assert.Equal("pull:NT26/3", finding.Scope);
    }

    [Fact]
    public void MissingPull_OnEveryDayOfTheWindow_SaysTheSame()
    {
        var first = Assert.Single(new MissingPullRule(Limits).Evaluate(Pull(14, Nothing("101", "B1"))));
        var later = Assert.Single(new MissingPullRule(Limits).Evaluate(Pull(16, Nothing("101", "B1"))));

        Assert.Equal(first.Facts.ToJson(), later.Facts.ToJson());
        Assert.Equal(first.Headline, later.Headline);
    }

    [Fact]
    public void MissingPull_OnceAnythingWasMeasured_IsNoMore() => Assert.Empty(new MissingPullRule(Limits).Evaluate(Pull(17, Nothing("101", "B1"), Whole("102", "B1"))));

    [Fact]
    public void Window_WhenTheDayEndsInTheTrialsZone_ClosesThenAndNotAtMidnightUtc()
    {
        // 2026-01-17 05:59 UTC is still 2026-01-16 23:59 in Chicago (UTC-6 in winter).
        var before = Pull(17, Nothing("101", "B1")) with { Now = new DateTimeOffset(2026, 1, 17, 5, 59, 59, TimeSpan.Zero) };
        var after = before with { Now = new DateTimeOffset(2026, 1, 17, 6, 0, 0, TimeSpan.Zero) };

        Assert.False(before.IsClosed);
        Assert.True(after.IsClosed);
    }

    [Fact]
    public void Window_WhenSummerTimeBegins_EndsAnHourEarlierInUtc()
    {
        // Summer time begins on 2026-03-08 at 02:00 in Chicago: that day ends at 05:00 UTC, the day before ended at 06:00 UTC.
        var pull = Pull(17, Nothing("101", "B1")) with { ClosesOn = new DateOnly(2026, 3, 8) };

        Assert.False((pull with { Now = new DateTimeOffset(2026, 3, 9, 4, 59, 59, TimeSpan.Zero) }).IsClosed);
        Assert.True((pull with { Now = new DateTimeOffset(2026, 3, 9, 5, 0, 0, TimeSpan.Zero) }).IsClosed);
    }

    [Fact]
    public void Zone_ThatDoesNotExist_LeavesEveryRuleNotEvaluated()
    {
        var trial = new TrialSettings { TrialCode = "NT26", TimeZone = "Mars/Olympus" };
        var empty = Pull(17, Nothing("101", "B1")) with { Trial = trial };
        var partial = Pull(17, Nothing("101", "B1"), Whole("102", "B1")) with { Trial = trial };

        var findings = RuleRunner.Run<PullEvidence>([new MissingPullRule(Limits)], empty)
            .Concat(RuleRunner.Run<PullEvidence>([new IncompletePullRule(), new IncompleteSampleRule()], partial)).ToList();

        Assert.Equal(3, findings.Count);
        Assert.All(findings, finding => Assert.True(finding.IsNotEvaluated));
        Assert.All(findings, finding => Assert.Contains("'Mars/Olympus'", finding.Headline, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(16, false)]
    [InlineData(17, true)]
    public void IncompletePull_OnlyAfterTheWindow_ListsMissingPlotsOnce(int day, bool fires)
    {
        var findings = new IncompletePullRule().Evaluate(Pull(day, Whole("101", "B1"), Nothing("102", "B1"), Nothing("201", "B2"))).ToList();

        Assert.Equal(fires, findings.Count == 1);
        Assert.All(findings, finding => Assert.Contains("2 of 3 samples have no reading: bay B1: 102; bay B2: 201", finding.Headline, StringComparison.Ordinal));
    }

    [Fact]
    public void IncompletePull_WhenAWholeMeasurementIsMissing_TellsItOnceForThePull()
    {
        var pull = Pull(17, Measured("101", (QuantityCatalogue.GlucoseInExtract, 2)), Measured("102", (QuantityCatalogue.GlucoseInExtract, 2)));

        var finding = Assert.Single(new IncompletePullRule().Evaluate(pull));

        Assert.Contains("no sample has hunter_l", finding.Headline, StringComparison.Ordinal);
        Assert.DoesNotContain(new IncompleteSampleRule().Evaluate(pull), sample => sample.Headline.Contains("hunter_l", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(16, 29, false)]
    [InlineData(17, 30, false)]
    [InlineData(17, 29, true)]
    public void IncompleteSample_OnlyAfterTheWindow_CountsReadings(int day, int chips, bool fires)
    {
        var findings = new IncompleteSampleRule().Evaluate(Pull(day, Whole("101", "B1"), Measured("102", (QuantityCatalogue.HunterL, chips)) with { Readings = Counts(chips) })).ToList();

        Assert.Equal(fires, findings.Count == 1);
        Assert.All(findings, finding => Assert.Contains("hunter_l 29 of 30", finding.Headline, StringComparison.Ordinal));
        Assert.All(findings, finding => Assert.Equal(("pull:NT26/3", "S102", "S102"), (finding.Scope, finding.Subject, finding.Barcode)));
    }

    [Fact]
    public void IncompleteSample_WithoutWhatSugarsAreComputedFrom_NamesIt()
    {
        var counts = new Dictionary<int, int> { [QuantityCatalogue.GlucoseInExtract.Id] = 2, [QuantityCatalogue.HunterL.Id] = 30 };

        var finding = Assert.Single(new IncompleteSampleRule().Evaluate(Pull(17, Whole("101", "B1") with { Readings = counts })));

        Assert.Contains("no extract_fresh_mass for its sugars, no extract_volume for its sugars", finding.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-01-17T05:59:00Z", false)]
    [InlineData("2026-01-17T06:00:00Z", true)]
    public void LatePull_WhenFirstMeasuredAfterTheLastLocalDay_IsNoted(string measured, bool fires)
    {
        var pull = Pull(20, Whole("101", "B1") with { FirstMeasuredAt = DateTimeOffset.Parse(measured, System.Globalization.CultureInfo.InvariantCulture) });

        var findings = new LatePullRule().Evaluate(pull).ToList();

        Assert.Equal(fires, findings.Count == 1);
        Assert.All(findings, finding => Assert.Equal(FindingLevel.Note, finding.Level));
    }

    private static PullEvidence Pull(int day, params PullSample[] samples) => new()
    {
        Trial = new TrialSettings { TrialCode = "NT26", TimeZone = "America/Chicago" },
        Number = 3,
        DueOn = Due,
        ClosesOn = Closes,
        Now = new DateTimeOffset(2026, 1, day, 18, 0, 0, TimeSpan.Zero),
        Samples = samples,
        Expected = [new PullExpectation(QuantityCatalogue.GlucoseInExtract, 2), new PullExpectation(QuantityCatalogue.HunterL, 30)],
    };

    private static PullSample Nothing(string plot, string bay) => new() { Barcode = "S" + plot, PlotCode = plot, BayCode = bay, Readings = new Dictionary<int, int>() };

    private static PullSample Whole(string plot, string bay) => Nothing(plot, bay) with { Readings = Counts(30) };

    private static PullSample Measured(string plot, params (Quantity Quantity, int Count)[] counts) =>
        Nothing(plot, "B1") with { Readings = counts.Append((QuantityCatalogue.ExtractFreshMass, 2)).Append((QuantityCatalogue.ExtractVolume, 2)).ToDictionary(count => count.Item1.Id, count => count.Item2) };

    private static Dictionary<int, int> Counts(int chips) => new()
    {
        [QuantityCatalogue.GlucoseInExtract.Id] = 2,
        [QuantityCatalogue.ExtractFreshMass.Id] = 2,
        [QuantityCatalogue.ExtractVolume.Id] = 2,
        [QuantityCatalogue.HunterL.Id] = chips,
    };
}
