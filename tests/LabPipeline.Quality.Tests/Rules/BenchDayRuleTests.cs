using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Order;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Quality.Tests.Rules;

/// <summary>Bench days are days of the trial's zone, also when the clocks change; what did not come of them is told once.</summary>
public sealed class BenchDayRuleTests
{
    // Summer time in America/Chicago ends on 2026-11-01 at 07:00 UTC and begins on 2026-03-08 at 08:00 UTC (Energy Policy Act of 2005; IANA tzdb).
    private static readonly DateTimeOffset LastMinuteOfOctober31 = new(2026, 11, 1, 4, 59, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset FirstMinuteOfNovember1 = new(2026, 11, 1, 5, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset LastMinuteOfNovember1 = new(2026, 11, 2, 5, 59, 0, TimeSpan.Zero);

    [Fact]
    public void BenchDay_OnTheDayOfTwentyFiveHours_IsOneDay()
    {
        var pull = Pull(Sample("101", LastMinuteOfOctober31), Sample("102", FirstMinuteOfNovember1), Sample("103", LastMinuteOfNovember1));

        Assert.Equal([new DateOnly(2026, 10, 31), new DateOnly(2026, 11, 1), new DateOnly(2026, 11, 1)], pull.Samples.Select(sample => pull.BenchDayOf(sample)!.Value));
    }

    [Theory]
    [InlineData("2026-03-08T05:59:00Z", 7)]
    [InlineData("2026-03-08T06:00:00Z", 8)]
    [InlineData("2026-03-09T04:59:00Z", 8)]
    [InlineData("2026-03-09T05:00:00Z", 9)]
    public void BenchDay_OnTheDayOfTwentyThreeHours_EndsAnHourEarlierInUtc(string instant, int day)
    {
        var pull = Pull(Sample("101", DateTimeOffset.Parse(instant, System.Globalization.CultureInfo.InvariantCulture)));

        Assert.Equal(new DateOnly(2026, 3, day), pull.BenchDayOf(pull.Samples[0]));
    }

    [Fact]
    public void EarlyMeasurement_OneMinuteBeforeTheLocalDayThePullOpens_IsHeld()
    {
        var finding = Assert.Single(new EarlyMeasurementRule().Evaluate(Pull(Sample("101", LastMinuteOfOctober31), Sample("102", FirstMinuteOfNovember1))));

        Assert.Equal((FindingLevel.Hold, "measured before the pull|NT26/2|measured early"), (finding.Level, finding.Fingerprint));
        Assert.Contains("1 of its 2 samples have readings from before, the first from 2026-10-31: bay B1: 101", finding.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void EarlyMeasurement_OnOrAfterTheDayItOpens_IsNothing() =>
        Assert.Empty(new EarlyMeasurementRule().Evaluate(Pull(Sample("101", FirstMinuteOfNovember1), Sample("102", LastMinuteOfNovember1))));

    [Theory]
    [Shows(80)]
    [InlineData("2026-11-03T05:59:00Z", false)]
    [InlineData("2026-11-03T06:00:00Z", true)]
    public void InstrumentSilent_FromTheSecondLocalDayAfter_IsToldOnceForTheDay(string now, bool fires)
    {
        var pull = Pull(Sugars("101"), Sugars("102"), Sugars("103")) with { Now = DateTimeOffset.Parse(now, System.Globalization.CultureInfo.InvariantCulture) };

        var findings = new InstrumentSilentRule().Evaluate(pull).ToList();

        Assert.Equal(fires, findings.Count == 1);
        Assert.All(findings, finding => Assert.Contains("3 samples were on the bench on 2026-11-01 and no colour meter sent anything of them", finding.Headline, StringComparison.Ordinal));
    }

    [Fact]
    public void InstrumentSilent_OnceOneSampleHasItsReading_IsNothing() =>
        Assert.Empty(new InstrumentSilentRule().Evaluate(Pull(Sugars("101"), Sugars("102"), Whole("103")) with { Now = LastMinuteOfNovember1.AddDays(5) }));

    [Fact]
    public void IncompleteSample_OfAnInstrumentToldAsSilent_IsNotToldAgain()
    {
        var pull = Pull(Sugars("101"), Sugars("102"), Sugars("103"), Whole("104") with { FirstMeasuredAt = LastMinuteOfNovember1.AddDays(1) }) with { Now = LastMinuteOfNovember1.AddDays(9) };

        Assert.Single(new InstrumentSilentRule().Evaluate(pull));
        Assert.DoesNotContain(new IncompleteSampleRule().Evaluate(pull), finding => finding.Headline.Contains("hunter_l", StringComparison.Ordinal));
    }

    [Fact]
    public void Grid_OfAPull_SaysWhatBecameOfEveryMeasurement()
    {
        var whole = Whole("101") with { FirstOfQuantity = new Dictionary<int, DateTimeOffset> { [QuantityCatalogue.GlucoseInExtract.Id] = FirstMinuteOfNovember1 } };
        var late = Whole("102") with { FirstOfQuantity = new Dictionary<int, DateTimeOffset> { [QuantityCatalogue.GlucoseInExtract.Id] = LastMinuteOfNovember1.AddDays(5) } };
        var excluded = Sugars("103") with { SetAside = new Dictionary<int, string> { [QuantityCatalogue.HunterL.Id] = "10 set aside by A. Lead: port open" } };
        var pull = Pull(whole, late, excluded, Sugars("104"));

        var open = SeasonGrid.Of(pull with { Now = LastMinuteOfNovember1 });
        var closed = SeasonGrid.Of(pull with { Now = LastMinuteOfNovember1.AddDays(9) });

        Assert.Equal(["done", "done", "late", "done", "done", "excluded", "done", "expected"], open.Select(state => state.State));
        Assert.Equal(["done", "done", "late", "done", "done", "excluded", "done", MeasurementStates.Missing], closed.Select(state => state.State));
        Assert.Equal("10 set aside by A. Lead: port open", closed[5].Reason);
    }

    [Fact]
    public void BenchOrder_OfAShiftedRack_IsHeldWithTheExplanation()
    {
        string[] planned = ["A", "B", "C", "D", "E"];
        var evidence = new OrderEvidence
        {
            Instrument = "colour meter 1",
            Run = "C1",
            Work = "frying",
            Trial = "NT26",
            Pull = 2,
            Verdict = OrderComparison.Compare(planned, ["E", "A", "B", "C", "D"]),
        };

        var finding = Assert.Single(new BenchOrderRule().Evaluate(evidence));

        Assert.Equal((FindingLevel.Hold, "order:colour meter 1/C1"), (finding.Level, finding.Scope));
        Assert.Contains("the rack is shifted", finding.Headline, StringComparison.Ordinal);
        Assert.Empty(new BenchOrderRule().Evaluate(evidence with { Verdict = OrderComparison.Compare(planned, planned) }));
    }

    [Theory]
    [InlineData(9, false)]
    [InlineData(10, true)]
    public void DeliveryFailing_AfterTenMinutes_IsHeldWithTheLastError(int minutes, bool fires)
    {
        var evidence = new DeliveryEvidence { Channel = "mail", OldestDueAt = FirstMinuteOfNovember1, LastError = "connection refused", Now = FirstMinuteOfNovember1.AddMinutes(minutes) };

        var findings = new DeliveryFailingRule().Evaluate(evidence).ToList();

        Assert.Equal(fires, findings.Count == 1);
        Assert.All(findings, finding => Assert.Contains("connection refused", finding.Headline, StringComparison.Ordinal));
    }

    private static PullEvidence Pull(params PullSample[] samples) => new()
    {
        Trial = new TrialSettings { TrialCode = "NT26", TimeZone = "America/Chicago" },
        Number = 2,
        DueOn = new DateOnly(2026, 11, 1),
        OpensOn = new DateOnly(2026, 11, 1),
        ClosesOn = new DateOnly(2026, 11, 5),
        Now = LastMinuteOfNovember1.AddDays(1),
        Samples = samples,
        Expected = [new PullExpectation(QuantityCatalogue.GlucoseInExtract, 2), new PullExpectation(QuantityCatalogue.HunterL, 10)],
    };

    private static PullSample Sample(string plot, DateTimeOffset measured) =>
        new() { Barcode = "S" + plot, PlotCode = plot, BayCode = "B1", Readings = new Dictionary<int, int>(), FirstMeasuredAt = measured };

    private static PullSample Sugars(string plot) => Sample(plot, FirstMinuteOfNovember1) with
    {
        Readings = new Dictionary<int, int>
        {
            [QuantityCatalogue.GlucoseInExtract.Id] = 2,
            [QuantityCatalogue.ExtractFreshMass.Id] = 2,
            [QuantityCatalogue.ExtractVolume.Id] = 2,
        },
    };

    private static PullSample Whole(string plot) =>
        Sugars(plot) with { Readings = new Dictionary<int, int>(Sugars(plot).Readings) { [QuantityCatalogue.HunterL.Id] = 10 } };
}
