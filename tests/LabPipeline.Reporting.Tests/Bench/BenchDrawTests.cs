using LabPipeline.Reporting.Bench;
using LabPipeline.Reporting.Tests.Exports;
using LabPipeline.Science.Order;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Tests.Bench;

public sealed class BenchDrawTests
{
    private const double Improbable = 1e-6;

    private static readonly DateTimeOffset Now = new(2026, 10, 5, 12, 30, 0, TimeSpan.Zero);

    [Fact]
    public void Of_APull_KeepsBlocksTogetherAndHoldsEverySampleOnce()
    {
        var pull = BenchPulls.Of(blocks: 3, plots: 8);
        var order = Draw(pull, 7);

        Assert.Equal(Enumerable.Range(1, 24), order.Places.Select(place => place.Position));
        Assert.Equal(pull.Samples.Select(sample => sample.Barcode).Order(StringComparer.Ordinal), order.Places.Select(place => place.Barcode).Order(StringComparer.Ordinal));
        Assert.Equal(["1", "2", "3"], OrderComparison.InSequence(order.Places.Select(place => place.Block)));
        Assert.Equal(order.Places, Draw(pull, 7).Places);
        Assert.NotEqual(order.Places, Draw(pull, 8).Places);
    }

    [Fact]
    public void Of_AnalysisAndFrying_AreDrawnApart() => Assert.NotEqual(
        Draw(BenchPulls.Of(1, 12), 7).Places.Select(place => place.Barcode),
        BenchDraw.Of(BenchPulls.Of(1, 12), BenchOrderKinds.Frying, 7, Now, "Ada").Places.Select(place => place.Barcode));

    [Fact]
    public void Of_ManySeeds_PutsEverySampleAtEveryPlaceEquallyOften()
    {
        const int seeds = 6000;
        var pull = BenchPulls.Of(1, 6);
        var counts = Enumerable.Range(1, seeds).SelectMany(seed => Draw(pull, seed).Places.Select(place => (place.Position, place.Barcode))).CountBy(cell => cell).Select(pair => pair.Value).ToList();

        Assert.Equal(36, counts.Count);
        // A 6 x 6 table with both margins fixed by design: 25 degrees of freedom.
        var expected = seeds / 6.0;
        Assert.True(ChiSquared.Upper(counts.Sum(count => (count - expected) * (count - expected) / expected), 25) > Improbable);
    }

    [Fact]
    public void UsualSeed_OfAPull_IsItsDueDay() => Assert.Equal(20261005, BenchDraw.UsualSeed(BenchPulls.Of(1, 2)));

    [Fact]
    public async Task FindAsync_OfALoadedPull_GivesItsSamplesAndDays()
    {
        await using var lab = await ExportLab.CreateAsync();

        var pull = await lab.ReadAsync(session => BenchPullStore.FindAsync(session, ExportLab.TrialCode, 3));

        Assert.Equal((new DateOnly(2026, 12, 7), 82, 10, "America/Chicago"), (pull!.DueOn, pull.DaysAfterHarvest, pull.TubersPerSample, pull.TimeZone));
        Assert.Equal([lab.Barcode("101", 3), lab.Barcode("102", 3), lab.Barcode("201", 3), lab.Barcode("202", 3)], pull.Samples.Select(sample => sample.Barcode));
        Assert.Null(await lab.ReadAsync(session => BenchPullStore.FindAsync(session, ExportLab.TrialCode, 2)));
        Assert.Null(await lab.ReadAsync(session => BenchPullStore.FindAsync(session, "NOPE", 1)));
    }

    [Fact]
    public async Task ListOpenAtOnceAsync_OfTwoTrialsOnTheBench_TellsTheDays()
    {
        await using var lab = await ExportLab.CreateAsync();
        await lab.LoadAsync(Planning.OutlineExample.Plan());
        var pull = await lab.ReadAsync(session => BenchPullStore.FindAsync(session, ExportLab.TrialCode, 1));

        var overlap = Assert.Single(await lab.ReadAsync(session => BenchPullStore.ListOpenAtOnceAsync(session, pull!)));

        Assert.StartsWith("Two pulls are open at once from 2026-10-05 to 2026-10-09: pull 1 of NT26 and pull 1 of VK-RATE-26.", overlap.Explanation, StringComparison.Ordinal);
    }

    [Theory]
    // 04:30 UTC on the 6th is still the evening of the 5th in Chicago; the clock change of 2026-11-01 does not move the day.
    [InlineData("2026-10-06T04:30:00Z", "2026-10-05")]
    [InlineData("2026-10-06T05:30:00Z", "2026-10-06")]
    [InlineData("2026-11-02T05:30:00Z", "2026-11-01")]
    [InlineData("2026-11-02T06:30:00Z", "2026-11-02")]
    public void LocalDay_OfAnInstant_IsTheDayAtTheTrial(string instant, string day) => Assert.Equal(
        DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture),
        BenchPulls.Of(1, 2).LocalDay(DateTimeOffset.Parse(instant, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void Untimely_OutsideTheWindow_SaysSoInOneLine()
    {
        var pull = BenchPulls.Of(1, 2);

        Assert.Null(pull.Untimely(pull.OpensOn));
        Assert.Null(pull.Untimely(pull.ClosesOn));
        Assert.Equal("Pull 1 of NT26 is not open yet: today is 2026-10-04, its window opens on 2026-10-05.", pull.Untimely(pull.OpensOn.AddDays(-1)));
        Assert.Contains("count as late", pull.Untimely(pull.ClosesOn.AddDays(1)), StringComparison.Ordinal);
    }

    private static BenchOrder Draw(BenchPull pull, long seed) => BenchDraw.Of(pull, BenchOrderKinds.Analysis, seed, Now, "Ada");
}
