using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Tests.Rules;

/// <summary>A trial's own limits decide about what is measured while they are in force; their history stays.</summary>
public sealed class ThresholdTests
{
    private static readonly DateTimeOffset February = new(2026, 2, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset March = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly ThresholdBook Book = new(
    [
        Row(QuantityCatalogue.MeanCleanedSurface, ThresholdKinds.Low, 1, 80m, February),
        Row(QuantityCatalogue.MeanCleanedSurface, ThresholdKinds.Low, 2, null, March),
        Row(QuantityCatalogue.Glucose, ThresholdKinds.High, 1, 0.35m, February),
    ]);

    [Theory]
    [InlineData(1, "85", true)]
    [InlineData(2, "85", false)]
    [InlineData(2, "80", false)]
    [InlineData(2, "79.9", true)]
    [InlineData(3, "85", true)]
    public void PeelTarget_ByTheMonthOfMeasurement_IsTheOneInForceThen(int month, string cleaned, bool fires)
    {
        var measured = new DateTimeOffset(2026, month, 14, 15, 0, 0, TimeSpan.Zero);
        var evidence = new SampleBuilder().Bag((QuantityCatalogue.CleanedSurface, decimal.Parse(cleaned, System.Globalization.CultureInfo.InvariantCulture))).Evidence()
            with
        { Thresholds = Book.At("NT26", measured) };

        Assert.Equal(fires, new PeelTargetRule(new RuleLimits()).Evaluate(evidence).Any());
    }

    [Fact]
    public void ImplausibleValue_BeyondTheTrialsOwnLimit_SaysWhoseLimitItIs()
    {
        var sample = new SampleBuilder().Extract("A", glucose: 0.36m, mass: 100m, volume: 100m).Evidence();

        Assert.Empty(new ImplausibleValueRule().Evaluate(sample));
        var finding = Assert.Single(new ImplausibleValueRule().Evaluate(sample with { Thresholds = Book.At("NT26", February) }));

        Assert.Contains("plausible 0.01 to 0.35 mg/g (set by the trial)", finding.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Thresholds_OfAnotherTrialOrAnEarlierTime_AreTheDefaults()
    {
        Assert.Equal(5m, Book.At("XX26", March).High(QuantityCatalogue.Glucose));
        Assert.Equal(5m, Book.At("NT26", February.AddTicks(-1)).High(QuantityCatalogue.Glucose));
        Assert.Equal(0.35m, Book.At("NT26", null).High(QuantityCatalogue.Glucose));
    }

    [Fact]
    public void WeighingOff_WithAWiderShiftOfTheTrial_StaysSilent()
    {
        var wide = new ThresholdBook([Row(QuantityCatalogue.SpecificGravity, ThresholdKinds.Shift, 1, 0.005m, February)]).At("NT26", March);
        var run = new RunEvidence
        {
            Instrument = "balance 1",
            Run = "W1",
            Weighed = [.. Enumerable.Range(0, 6).Select(index => Weighed(index, "W1", 1.0842m + 0.004m))],
            WeighedElsewhere = [.. Enumerable.Range(0, 6).Select(index => Weighed(index, "W2", 1.0842m))],
        };

        Assert.Single(new WeighingRule(new RuleLimits()).Evaluate(run));
        Assert.Empty(new WeighingRule(new RuleLimits()).Evaluate(run with { Thresholds = new Dictionary<string, ThresholdsInForce> { ["NT26"] = wide } }));
    }

    private static WeighedSample Weighed(int index, string run, decimal gravity) => new(
        FormattableString.Invariant($"S{index}{run}"), "NT26", 1, FormattableString.Invariant($"clone {index}"), run, gravity + (0.0001m * index));

    private static ThresholdRow Row(Quantity quantity, string kind, int version, decimal? value, DateTimeOffset from) => new()
    {
        TrialCode = "NT26",
        QuantityId = quantity.Id,
        Kind = kind,
        Version = version,
        Value = value,
        InForceFrom = from,
    };
}
