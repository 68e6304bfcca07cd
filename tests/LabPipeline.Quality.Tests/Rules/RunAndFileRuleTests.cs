using LabPipeline.Quality.Rules;
using LabPipeline.Science.Gravity;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Tests.Rules;

/// <summary>Rules about runs and files. The untared sling is that of D_specific_gravity_examples.csv: 12.4 g of 283.6 g in water.</summary>
public sealed class RunAndFileRuleTests
{
    private static readonly RuleLimits Limits = new();

    // Eight clone x treatment combinations of different gravity, each weighed in four sessions (blocks) with small plot differences.
    private static readonly decimal[] Levels = [1.072m, 1.076m, 1.080m, 1.084m, 1.088m, 1.074m, 1.082m, 1.090m];
    private static readonly decimal[] PlotNoise = [0.0004m, -0.0003m, 0.0006m, -0.0005m, 0.0002m, -0.0006m, 0.0003m, -0.0001m];

    [Fact]
    public void Weighing_WhenTheSlingWasNotTared_IsHeldThoughVarietiesDifferMore()
    {
        var untared = Session(1, gravity => WithSling(gravity));
        var evidence = Run(untared, Session(2), Session(3), Session(4));

        var finding = Assert.Single(new WeighingRule(Limits).Evaluate(evidence));

        Assert.Equal(FindingLevel.Hold, finding.Level);
        Assert.Contains("specific gravity of 8 samples of pull NT26/3 is shifted by +0.00", finding.Headline, StringComparison.Ordinal);
        Assert.Equal("weighing off|balance 1/run 1|shift NT26/3", finding.Fingerprint);
        Assert.Contains("\"files\":\"weighing-1.txt\"", finding.Facts.ToJson(), StringComparison.Ordinal);
    }

    [Fact]
    public void Weighing_OfTheSoundSessionsBesideABadOne_IsNotBlamed() =>
        Assert.Empty(new WeighingRule(Limits).Evaluate(Run(Session(2), Session(1, WithSling), Session(3), Session(4))));

    [Theory]
    [InlineData(0.0030, false)]
    [InlineData(0.0031, true)]
    public void Weighing_ExactlyAtTheShiftThatMatters_IsAccepted(double shift, bool fires)
    {
        var evidence = Run(Session(1, gravity => gravity + (decimal)shift, quiet: true), Session(2, quiet: true), Session(3, quiet: true));

        Assert.Equal(fires, new WeighingRule(Limits).Evaluate(evidence).Any());
    }

    [Fact]
    public void Weighing_WhenPlotsScatterMoreThanTheShift_IsNotClaimed()
    {
        // Differences of -0.02, ..., +0.03 with a median of 0.004: three standard errors are far wider.
        var noisy = Session(1).Select((sample, index) => sample with { SpecificGravity = Levels[index] + 0.004m + ((index - 3.5m) * 0.006m) }).ToList();

        Assert.DoesNotContain(
            new WeighingRule(Limits).Evaluate(Run(noisy, Session(2, quiet: true), Session(3, quiet: true))), finding => finding.Window != "implausible");
    }

    [Fact]
    public void Weighing_WithTooFewMates_IsNotEvaluated()
    {
        var evidence = Run(Session(1).Take(4).ToList(), Session(2), Session(3));

        var finding = Assert.Single(new WeighingRule(Limits).Evaluate(evidence));

        Assert.True(finding.IsNotEvaluated);
        Assert.Contains("4 samples of pull NT26/3 have mates", finding.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Weighing_WithOneOtherSession_SaysThatEitherMayBeOff()
    {
        var finding = Assert.Single(new WeighingRule(Limits).Evaluate(Run(Session(1, WithSling), Session(2))));

        Assert.Contains("it is not known which of the two is off", finding.Advice, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.110, false)]
    [InlineData(1.111, true)]
    [InlineData(1.050, false)]
    [InlineData(1.049, true)]
    public void Weighing_OfAGravityNoTuberHas_IsHeld(double gravity, bool fires)
    {
        var evidence = Run([.. Session(1).Skip(1), Session(1)[0] with { SpecificGravity = (decimal)gravity }], Session(2), Session(3));

        Assert.Equal(fires, new WeighingRule(Limits).Evaluate(evidence).Any(finding => finding.Window == "implausible"));
    }

    [Theory]
    [InlineData("oil_start", 175, 190)]
    [InlineData("oil_lowest", 165, 190)]
    [InlineData("oil_after", 165, 195)]
    [InlineData("fry_time", 120, 140)]
    public void FryBatch_OutsideItsWindow_IsHeld(string name, int lowest, int highest)
    {
        foreach (var (value, fires) in new[] { (lowest - 0.1m, true), (lowest, false), (highest, false), (highest + 0.1m, true) })
        {
            Assert.Equal(fires, new FryBatchRule().Evaluate(Fry((name, value))).Any());
        }
    }

    [Fact]
    public void FryBatch_WithSeveralReadingsOut_IsOneFindingWithAllOfThem()
    {
        var finding = Assert.Single(new FryBatchRule().Evaluate(Fry(("oil_start", 170m), ("oil_lowest", 160m), ("fry_time", 130m))));

        Assert.Contains("oil_start 170 degC, window 175 to 190; oil_lowest 160 degC, window 165 to 190", finding.Headline, StringComparison.Ordinal);
        Assert.DoesNotContain("fry_time", finding.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void FileRefused_UntilAFileOfThatNameIsRead_Blocks()
    {
        var refused = new FileEvidence { Name = "sugars.csv", Kind = "sugar", Sha256 = "ab12", State = "refused", ReasonCode = "bad-number", Reason = "line 4: '4,6'" };

        Assert.Equal(FindingLevel.Block, Assert.Single(new FileRefusedRule().Evaluate(refused)).Level);
        Assert.Empty(new FileRefusedRule().Evaluate(refused with { ReplacedBy = "sugars.csv" }));
        Assert.Empty(new FileRefusedRule().Evaluate(refused with { State = "taken out" }));
    }

    [Fact]
    public void UnknownBarcodes_OfAWaitingFile_AreListed()
    {
        var waiting = new FileEvidence { Name = "sugars.csv", Sha256 = "ab12", State = "waiting", UnknownBarcodes = ["26K70013A", "26K70012C"] };

        var finding = Assert.Single(new UnknownBarcodeRule().Evaluate(waiting));

        Assert.Contains("2 barcodes that are in no trial plan: 26K70012C, 26K70013A", finding.Headline, StringComparison.Ordinal);
        Assert.Empty(new UnknownBarcodeRule().Evaluate(waiting with { UnknownBarcodes = [] }));
    }

    [Theory]
    [InlineData(15, false)]
    [InlineData(16, true)]
    public void HeldFile_LongerThanItsLimit_IsHeld(int minutes, bool fires)
    {
        var seen = new DateTimeOffset(2026, 1, 14, 15, 0, 0, TimeSpan.Zero);
        var held = new HeldFileEvidence { Folder = "sugar", Name = "run.csv", Reason = "the last line has no end", FirstSeenAt = seen, Now = seen.AddMinutes(minutes) };

        Assert.Equal(fires, new HeldFileRule(Limits).Evaluate(held).Any());
    }

    [Fact]
    public void Facts_UnderOneName_AreKeptApartAndWrittenOnce()
    {
        var facts = new FactSheet().Add("hunter_l", 8.2m).Add("plausible", "25 to 75").Add("hunter_l", 9.1m).Add("plausible", "25 to 75").Add("note", "a \"b\" \u00e9");

        Assert.Equal("{\"hunter_l\":\"8.2\",\"plausible\":\"25 to 75\",\"hunter_l (2)\":\"9.1\",\"note\":\"a \\\"b\\\" \u00e9\"}", facts.ToJson());
    }

    private static decimal WithSling(decimal gravity)
    {
        const decimal air = 3652.4m;
        return SpecificGravity.FromWeights(air, SpecificGravity.UnderwaterWeightGrams(gravity, air) + 12.4m);
    }

    private static List<WeighedSample> Session(int number, Func<decimal, decimal>? weigh = null, bool quiet = false) =>
    [
        .. Levels.Select((level, index) => new WeighedSample(
            $"S{number}{index}", "NT26", 3, $"mates {index}", $"balance 1/run {number}",
            (weigh ?? (gravity => gravity))(level + (quiet ? 0m : PlotNoise[(index + (3 * number)) % PlotNoise.Length]))) { FileName = $"weighing-{number}.txt" }),
    ];

    private static RunEvidence Run(List<WeighedSample> own, params List<WeighedSample>[] others) => new()
    {
        Instrument = "balance 1",
        Run = own[0].Run["balance 1/".Length..],
        Weighed = own,
        WeighedElsewhere = [.. others.SelectMany(other => other)],
    };

    private static RunEvidence Fry(params (string Name, decimal Value)[] readings) => new()
    {
        Instrument = "fryer",
        Run = "2026-01-14",
        FryReadings = [.. readings.Select(reading => new FryReading { RowKey = "7", QuantityId = QuantityCatalogue.Find(reading.Name)!.Id, Value = reading.Value, FileName = "fry.csv", Line = 8 })],
    };
}
