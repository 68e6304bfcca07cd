using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Tests.Rules;

/// <summary>Controls against the limits in force when they were measured, and the readings that a failed one leaves in doubt.</summary>
public sealed class ControlReviewTests
{
    private static readonly DateTimeOffset Start = new(2026, 10, 6, 13, 30, 0, TimeSpan.Zero);
    private static readonly ControlLimitRow Target = Limits(ControlLimitKinds.Target, 0.050m, null, 0.0475m, 0.0525m);
    private static readonly ControlLimitRow Frozen = Limits(ControlLimitKinds.Frozen, 0.050m, 0.001m, 0.047m, 0.053m);
    private static readonly HashSet<string> NoRelease = [];

    [Theory]
    [InlineData("0.0475", null)]
    [InlineData("0.0525", null)]
    [InlineData("0.04749", ControlReview.OutsideTolerance)]
    [InlineData("0.05251", ControlReview.OutsideTolerance)]
    public void Judge_AgainstAStatedTarget_TakesTheToleranceWithItsLimits(string value, string? failure) =>
        Assert.Equal(failure, Judge(Target, Control(0, decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture))).Single().Failure);

    // Rules: 1-3s and 2-2s of Westgard et al. 1981, Clinical Chemistry 27:493-501; a point on a line is not beyond it.
    [Theory]
    [InlineData("0.053", "0.050", null)]
    [InlineData("0.05301", "0.050", "beyond_3s")]
    [InlineData("0.0521", "0.0479", null)]
    [InlineData("0.0521", "0.0522", "two_beyond_2s")]
    public void Judge_AgainstFrozenLimits_FollowsTheRunRules(string first, string second, string? failure)
    {
        var verdicts = Judge(Frozen, Control(0, Number(first)), Control(20, Number(second)));

        Assert.Equal(failure, verdicts.Select(verdict => verdict.Failure).FirstOrDefault(name => name is not null));
    }

    [Fact]
    public void Judge_ByTheLimitsInForceWhenItWasMeasured_LeavesThePastAlone()
    {
        var narrow = Target with { Version = 2, Lower = 0.0499m, Upper = 0.0501m, InForceFrom = Start.AddMinutes(10) };

        var verdicts = ControlReview.Judge("analyser 1", [Control(0, 0.051m), Control(20, 0.051m)], new ControlLimitBook([Target, narrow]));

        Assert.Equal([null, ControlReview.OutsideTolerance], verdicts.Select(verdict => verdict.Failure));
    }

    [Fact]
    public void Judge_WithoutLimitsOrOfWhatOnlyDescribes_GivesNoVerdict()
    {
        var dilution = Control(0, 1m) with { QuantityId = QuantityCatalogue.DilutionFactor.Id };

        Assert.Empty(ControlReview.Judge("analyser 2", [Control(0, 9m)], new ControlLimitBook([Target])));
        Assert.Empty(ControlReview.Judge("analyser 1", [dilution], new ControlLimitBook([Target with { QuantityId = dilution.QuantityId }])));
    }

    [Fact]
    public void InDoubt_BetweenAGoodControlAndTheNextGoodOne_IsEverythingBesideTheFailedOne()
    {
        var verdicts = Judge(Target, Control(0, 0.050m), Control(20, 0.060m), Control(40, 0.050m), Control(60, 0.050m));

        var doubts = ControlReview.InDoubt(verdicts, [Reading(1, 10), Reading(2, 30), Reading(3, 50)], NoRelease);

        Assert.Equal([1L, 2L], doubts.Select(doubt => doubt.Reading.ReadingId));
        Assert.All(doubts, doubt => Assert.Equal(0.060m, doubt.Cause.Point.Value));
    }

    [Fact]
    public void InDoubt_OfAnotherQuantity_IsNothing()
    {
        var verdicts = Judge(Target, Control(0, 0.060m), Control(20, 0.060m));

        Assert.Empty(ControlReview.InDoubt(verdicts, [Reading(1, 10) with { QuantityId = QuantityCatalogue.TotalGlucoseInExtract.Id }], NoRelease));
    }

    [Fact]
    public void InDoubt_OnceReleased_IsNothingUnlessAnotherControlFails()
    {
        var verdicts = Judge(Target, Control(0, 0.060m), Control(20, 0.050m), Control(40, 0.061m));
        HashSet<string> released = [verdicts[0].Point.Identity];

        var doubts = ControlReview.InDoubt(verdicts, [Reading(1, 10), Reading(2, 30)], released);

        Assert.Equal([2L], doubts.Select(doubt => doubt.Reading.ReadingId));
    }

    [Fact]
    public void InDoubt_WhateverTheOrderOfRows_IsTheSame()
    {
        ControlPoint[] controls = [Control(0, 0.050m), Control(20, 0.060m), Control(40, 0.050m)];
        ControlledReading[] readings = [Reading(1, 10), Reading(2, 30), Reading(3, 50)];

        var forwards = ControlReview.InDoubt(Judge(Target, controls), readings, NoRelease);
        var backwards = ControlReview.InDoubt(Judge(Target, [.. controls.Reverse()]), readings.Reverse(), NoRelease);

        Assert.Equal(forwards.Select(doubt => doubt.Reading), backwards.Select(doubt => doubt.Reading));
    }

    // ISO 7870-2, individuals: sigma = mean moving range / d2(2), d2(2) = 1.128379; here MR is 2 throughout: 11 ± 3 x 2 / 1.128379 = 11 ± 5.3174.
    [Fact]
    public void FrozenLimits_FromTwentyRuns_AreThoseOfTheMovingRange()
    {
        var limits = FrozenLimits.From(Openings(20));

        Assert.Equal((11m, 20), (limits.Centre, limits.Runs));
        Assert.Equal(5.6826m, decimal.Round(limits.Lower, 4));
        Assert.Equal(16.3174m, decimal.Round(limits.Upper, 4));
        Assert.Contains("run 19", limits.FromRuns, StringComparison.Ordinal);
    }

    [Fact]
    public void FrozenLimits_FromNineteenRuns_AreRefused() =>
        Assert.Contains("Found 19 runs", Assert.Throws<ArgumentException>(() => FrozenLimits.From(Openings(19))).Message, StringComparison.Ordinal);

    [Fact]
    public void Trend_OfSevenRunsOnOneSide_IsNotedAndOfSixIsNot()
    {
        Assert.Empty(new ControlTrendRule().Evaluate(Chart(6)));
        var finding = Assert.Single(new ControlTrendRule().Evaluate(Chart(7)));

        Assert.Equal((FindingLevel.Note, "chart:analyser 1/CTRL-LOW/glucose_in_extract"), (finding.Level, finding.Scope));
        Assert.Contains("7 points in a row on one side", finding.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Trend_WithoutAnyLimits_IsNotEvaluated()
    {
        var finding = Assert.Single(new ControlTrendRule().Evaluate(Chart(7) with { Limits = null }));

        Assert.True(finding.IsNotEvaluated);
        Assert.Contains("takes 20 runs", finding.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.9", "the unit was probably changed")]
    [InlineData("0.00277", "the unit was probably changed")]
    [InlineData("0.06", "Calibrate again")]
    public void Rule_ForAFailedControl_SaysWhatItLooksLike(string value, string hint)
    {
        var evidence = new ControlEvidence
        {
            Instrument = "analyser 1",
            Run = "A1",
            Verdicts = Judge(Target, Control(0, Number(value))),
            Bracketed = [Reading(1, 10)],
        };

        var finding = Assert.Single(new ControlCheckRule().Evaluate(evidence));

        Assert.Equal((FindingLevel.Hold, "controls:analyser 1/A1"), (finding.Level, finding.Scope));
        Assert.Contains(hint, finding.Advice, StringComparison.Ordinal);
        Assert.Contains("limits 0.0475 to 0.0525 (stated target, provisional)", finding.Headline, StringComparison.Ordinal);
        Assert.Contains("1 readings of 1 samples are in doubt", finding.Headline, StringComparison.Ordinal);
    }

    private static IReadOnlyList<ControlVerdict> Judge(ControlLimitRow limits, params ControlPoint[] points) =>
        ControlReview.Judge("analyser 1", points, new ControlLimitBook([limits]));

    private static List<(string Run, ControlPoint Point)> Openings(int runs) =>
        [.. Enumerable.Range(0, runs).Select(run => (FormattableString.Invariant($"run {run}"), Control(run, run % 2 == 0 ? 10m : 12m)))];

    private static ControlChartEvidence Chart(int high) => new()
    {
        Instrument = "analyser 1",
        Material = "CTRL-LOW",
        Quantity = QuantityCatalogue.GlucoseInExtract,
        Limits = Frozen,
        Openings = [.. Enumerable.Range(0, high + 1).Select(run => (FormattableString.Invariant($"run {run}"), Control(run, run == 0 ? 0.0495m : 0.0505m + ((run % 2) * 0.0001m))))],
    };

    private static ControlLimitRow Limits(string kind, decimal centre, decimal? sigma, decimal lower, decimal upper) => new()
    {
        Instrument = "analyser 1",
        Material = "CTRL-LOW",
        QuantityId = QuantityCatalogue.GlucoseInExtract.Id,
        Version = 1,
        Kind = kind,
        Centre = centre,
        Sigma = sigma,
        Lower = lower,
        Upper = upper,
        Runs = sigma is null ? 0 : 20,
        InForceFrom = Start.AddDays(-100),
    };

    private static ControlPoint Control(int minute, decimal value) => new()
    {
        Material = "CTRL-LOW",
        QuantityId = QuantityCatalogue.GlucoseInExtract.Id,
        RowKey = FormattableString.Invariant($"control {minute:00}"),
        Value = value,
        MeasuredAt = Start.AddMinutes(minute),
        Line = minute + 1,
        FileName = "run.csv",
    };

    private static ControlledReading Reading(long id, int minute) => new()
    {
        ReadingId = id,
        Barcode = FormattableString.Invariant($"S{id}"),
        QuantityId = QuantityCatalogue.GlucoseInExtract.Id,
        MeasuredAt = Start.AddMinutes(minute),
        Line = minute + 1,
    };

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
