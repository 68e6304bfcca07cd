using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Tests.Rules;

/// <summary>Rules about one sample: fires beyond its limit, stays silent exactly at it. Limits as docs/specs/quality-rules.md states them.</summary>
public sealed class SampleRuleTests
{
    private static readonly RuleLimits Limits = new();

    [Fact]
    public void Duplicates_ExactlyAtTheLimit_Agree()
    {
        // r = 2.8 x 0.002 = 0.0056.
        Assert.Empty(new DuplicateDisagreementRule().Evaluate(Duplicates(0.0500m, 0.0556m)));
    }

    [Fact]
    public void Duplicates_JustBeyondTheLimit_AreHeldWithNumbersAndLimit()
    {
        var finding = Assert.Single(new DuplicateDisagreementRule().Evaluate(Duplicates(0.0500m, 0.0557m)));

        Assert.Equal(FindingLevel.Hold, finding.Level);
        Assert.Equal("Sample 26K70012C: duplicate glucose 0.05 and 0.0557 mg/g differ by 0.0057; limit r = 0.0056 (s_r 0.002).", finding.Headline);
        Assert.Equal("duplicate disagreement|26K70012C|glucose", finding.Fingerprint);
        Assert.Equal(("sample:26K70012C", "NT26", 3, "26K70012C"), (finding.Scope, finding.TrialCode, finding.PullNo, finding.Barcode));
    }

    [Fact]
    public void Duplicates_WithoutARepeatabilityOfTheLab_SayThatTheLimitIsProvisional()
    {
        var evidence = new SampleBuilder().Extract("A", 0.182m, 100m, 100m).Extract("B", 0.231m, 100m, 100m).Evidence();

        var finding = Assert.Single(new DuplicateDisagreementRule().Evaluate(evidence));

        // s_r = 4.4 % of the mean 0.2065 (half Horwitz, E_horwitz.csv row 0.05 mg/g); r = 2.8 s_r.
        Assert.Contains("differ by 0.049; limit r = 0.02544 (provisional s_r 0.009086)", finding.Headline, StringComparison.Ordinal);
        Assert.Contains("\"glucose s_r source\":\"half the Horwitz reproducibility", finding.Facts.ToJson(), StringComparison.Ordinal);
    }

    [Fact]
    public void Duplicates_WhenFourStillDisagree_AreOnlyNoted()
    {
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.002m)
            .Extract("1", 0.050m, 100m, 100m).Extract("2", 0.0562m, 100m, 100m).Extract("3", 0.049m, 100m, 100m).Extract("4", 0.0575m, 100m, 100m).Evidence();

        Assert.Equal(FindingLevel.Note, Assert.Single(new DuplicateDisagreementRule().Evaluate(evidence)).Level);
    }

    [Fact]
    public void Duplicates_WithARepeatabilityOfZero_AreNotEvaluated()
    {
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0m).Extract("A", 0.05m, 100m, 100m).Extract("B", 0.05m, 100m, 100m).Evidence();

        var finding = Assert.Single(new DuplicateDisagreementRule().Evaluate(evidence));

        Assert.True(finding.IsNotEvaluated);
        Assert.Contains("repeatability kept for glucose is 0", finding.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Duplicates_WhenOneHasNoNumber_AreComparedByTheLeastTheyDiffer()
    {
        var near = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.002m).Extract("A", 0.0556m, 100m, 100m)
            .Extract("B", null, 100m, 100m).BelowLimit("B", QuantityCatalogue.GlucoseInExtract, 0.050m);
        var far = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.002m).Extract("A", 0.0557m, 100m, 100m)
            .Extract("B", null, 100m, 100m).BelowLimit("B", QuantityCatalogue.GlucoseInExtract, 0.050m);

        Assert.Empty(new DuplicateDisagreementRule().Evaluate(near.Evidence()));
        Assert.Contains("<0.05", Assert.Single(new DuplicateDisagreementRule().Evaluate(far.Evidence())).Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(10)]
    public void DilutionSlip_WhenTheRatioIsAUsualFactor_SaysSoInsteadOfDisagreement(int factor)
    {
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.0001m, 0.02m)
            .Extract("A", 0.100m, 100m, 100m).Extract("B", 0.101m * factor, 100m, 100m).Evidence();

        var finding = Assert.Single(new DilutionSlipRule().Evaluate(evidence));

        Assert.Contains($"a dilution by {factor} was forgotten", finding.Headline, StringComparison.Ordinal);
        Assert.Empty(new DuplicateDisagreementRule().Evaluate(evidence));
    }

    [Theory]
    [InlineData(0.2110, true)]
    [InlineData(0.2112, false)]
    public void DilutionSlip_AtItsTolerance_IsInclusive(double second, bool slip)
    {
        // Relative s_r 2 % each: tolerance 1.96 x sqrt(2) x 0.02 = 0.05544; 2 x 1.05544 = 2.11087.
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.0001m, 0.02m)
            .Extract("A", 0.1m, 100m, 100m).Extract("B", (decimal)second, 100m, 100m).Evidence();

        Assert.Equal(slip, new DilutionSlipRule().Evaluate(evidence).Any());
        Assert.Equal(!slip, new DuplicateDisagreementRule().Evaluate(evidence).Any());
    }

    [Fact]
    public void DilutionSlip_WhenTheMethodRepeatsTooBadlyToTell_IsNotClaimed()
    {
        // 4 % each: 1.96 x sqrt(2) x 0.04 = 0.111, beyond 0.10 where 4 and 5 run together.
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.0001m, 0.04m)
            .Extract("A", 0.1m, 100m, 100m).Extract("B", 0.2m, 100m, 100m).Evidence();

        Assert.Empty(new DilutionSlipRule().Evaluate(evidence));
        Assert.Single(new DuplicateDisagreementRule().Evaluate(evidence));
    }

    [Fact]
    public void DilutionSlip_WhenExtractsAgree_IsNotClaimed()
    {
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.1m).Extract("A", 0.1m, 100m, 100m).Extract("B", 0.2m, 100m, 100m).Evidence();

        Assert.Empty(new DilutionSlipRule().Evaluate(evidence));
    }

    [Fact]
    public void DilutionSlip_OfOneSugar_ExplainsTheOtherSugarOfThatExtract()
    {
        // Glucose repeats within 2 % and shows the 5; sucrose near its constant repeats too badly to show it alone, but fits.
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.0001m, 0.02m).Repeatability(QuantityCatalogue.Sucrose, 0.02m, 0.03m)
            .Extract("A", 0.400m, 100m, 100m, sucrose: 2.0m).Extract("B", 0.080m, 100m, 100m, sucrose: 0.38m).Evidence();

        var finding = Assert.Single(new DilutionSlipRule().Evaluate(evidence));

        Assert.Contains("duplicate glucose", finding.Headline, StringComparison.Ordinal);
        Assert.Contains("duplicate sucrose", finding.Headline, StringComparison.Ordinal);
        Assert.Empty(new DuplicateDisagreementRule().Evaluate(evidence));
    }

    [Fact]
    public void DilutionSlip_OfOneExtract_DoesNotExplainTheOtherWayRound()
    {
        var evidence = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.0001m, 0.02m).Repeatability(QuantityCatalogue.Sucrose, 0.02m, 0.03m)
            .Extract("A", 0.400m, 100m, 100m, sucrose: 0.38m).Extract("B", 0.080m, 100m, 100m, sucrose: 2.0m).Evidence();

        Assert.Equal("sucrose", Assert.Single(new DuplicateDisagreementRule().Evaluate(evidence)).Window);
    }

    [Fact]
    public void NegativeSucrose_OfBothExtracts_IsOneFinding()
    {
        var evidence = new SampleBuilder().Extract("A", 0.5m, 100m, 100m, total: 0.1m).Extract("B", 0.6m, 100m, 100m, total: 0.1m).Evidence();

        Assert.Contains("sucrose is -0.76 and -0.95 mg/g", Assert.Single(new NegativeSucroseRule().Evaluate(evidence)).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Implausible_CoordinatesOfOneChip_AreOneFindingWithoutAUnit()
    {
        var evidence = new SampleBuilder().Chip(1, 1, (QuantityCatalogue.HunterL, 8.2m), (QuantityCatalogue.HunterA, 1m), (QuantityCatalogue.HunterB, 2.1m))
            .Chip(1, 2, (QuantityCatalogue.HunterL, 60m), (QuantityCatalogue.HunterA, 1m), (QuantityCatalogue.HunterB, 20m)).Evidence();

        var finding = Assert.Single(new ImplausibleValueRule().Evaluate(evidence));

        Assert.Equal(
            "Sample 26K70012C: hunter_l 8.2 (sugars.csv line 2), plausible 25 to 75, hunter_b 2.1 (sugars.csv line 2), plausible 5 to 32.", finding.Headline);
        Assert.Equal("implausible value|26K70012C|colour readings", finding.Fingerprint);
    }

    [Fact]
    public void NegativeSucrose_WithinChance_IsANoteAndBeyondItAHold()
    {
        // r at zero = 2.8 x 0.01 = 0.028 mg/g; V = m; sucrose = difference x 1.9000.
        var within = Sucrose(total: 0.040m, free: 0.046m);
        var beyond = Sucrose(total: 0.030m, free: 0.046m);

        Assert.Equal(FindingLevel.Note, Assert.Single(new NegativeSucroseRule().Evaluate(within)).Level);
        var finding = Assert.Single(new NegativeSucroseRule().Evaluate(beyond));
        Assert.Equal(FindingLevel.Hold, finding.Level);
        Assert.Contains("sucrose is -0.0304 mg/g, below 0; beyond the limit r = 0.028 at zero", finding.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void NegativeSucrose_OfExactlyZero_IsNothing() => Assert.Empty(new NegativeSucroseRule().Evaluate(Sucrose(total: 0.046m, free: 0.046m)));

    [Theory]
    [InlineData(10000, false)]
    [InlineData(10001, true)]
    public void Implausible_BeyondTheCatalogueRange_IsNoted(int grams, bool fires)
    {
        var evidence = new SampleBuilder().Bag((QuantityCatalogue.WeightInAir, grams)).Evidence();

        var findings = new ImplausibleValueRule().Evaluate(evidence).ToList();

        Assert.Equal(fires, findings.Count == 1);
        Assert.All(findings, finding => Assert.Contains("sugars.csv line 2", finding.Headline, StringComparison.Ordinal));
    }

    [Fact]
    public void Implausible_ResultsOutsideTheirRange_AreNotedWithTheirBasis()
    {
        var evidence = new SampleBuilder().Extract("A", 1m, 10m, 100m).Evidence();

        var finding = Assert.Single(new ImplausibleValueRule().Evaluate(evidence));

        Assert.Equal("Sample 26K70012C: glucose 10 mg/g (one extract), plausible 0.01 to 5 mg/g.", finding.Headline);
    }

    [Fact]
    public void Conflict_OfAReExport_ShowsBothValuesWithFileAndLine()
    {
        var evidence = new SampleBuilder().Contest(Contested("4.9") with { StandingRawValue = "4.6", StandingFileName = "sugars.csv", StandingLine = 7, StandingBarcode = SampleBuilder.Barcode }).Evidence();

        var finding = Assert.Single(new ConflictingReExportRule().Evaluate(evidence));

        Assert.Equal(
            "Sample 26K70012C: glucose_in_extract 4.9 (sugars-2.csv line 9) against 4.6 (sugars.csv line 7); the stored value stays in effect.", finding.Headline);
    }

    [Fact]
    public void Conflict_ThatMovesARowToAnotherSample_NamesIt()
    {
        var evidence = new SampleBuilder().Contest(Contested("4.9") with { StandingRawValue = "4.6", StandingFileName = "sugars.csv", StandingLine = 7, StandingBarcode = "26K70013A" }).Evidence();

        Assert.Contains("4.6 of sample 26K70013A", Assert.Single(new ConflictingReExportRule().Evaluate(evidence)).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Conflicts_OfOneFile_AreOneFinding()
    {
        var sample = new SampleBuilder();
        for (var line = 9; line < 39; line++)
        {
            sample.Contest(Contested("4.9") with { Line = line, RowKey = $"{line}" });
        }

        var finding = Assert.Single(new ConflictingReExportRule().Evaluate(sample.Evidence()));

        Assert.Contains("and 26 more", finding.Headline, StringComparison.Ordinal);
        Assert.Equal(30, finding.Facts.Facts.Count);
    }

    [Theory]
    [InlineData(90, false)]
    [InlineData(89.9, true)]
    public void Peel_BelowItsTarget_IsNoted(double share, bool fires)
    {
        var evidence = new SampleBuilder().Bag((QuantityCatalogue.CleanedSurface, (decimal)share)).Evidence();

        Assert.Equal(fires, new PeelTargetRule(Limits).Evaluate(evidence).Any());
    }

    [Fact]
    public void Faults_OfResults_BlockWhenAReadingIsWrongAndAreNotedWhenAStatementIsMissing()
    {
        var wrong = new SampleBuilder().Extract("A", 0.05m, mass: 0m).Evidence();
        var unstated = new SampleBuilder().Chip(1, 1, (QuantityCatalogue.HunterL, 60m), (QuantityCatalogue.HunterA, 2m), (QuantityCatalogue.HunterB, 20m)).Evidence();

        var block = Assert.Single(new ResultNotComputableRule().Evaluate(wrong));
        Assert.Equal(FindingLevel.Block, block.Level);
        Assert.Equal("Sample 26K70012C, extract A: extract_fresh_mass is 0 g (sugars.csv line 2), expected more than 0.", block.Headline);
        Assert.Equal(FindingLevel.Note, Assert.Single(new ResultNotComputableRule().Evaluate(unstated)).Level);
    }

    [Fact]
    [Shows(70)]
    public void Runner_WhenARuleThrows_FindsItNotEvaluatedAndRunsTheOthers()
    {
        var evidence = Duplicates(0.05m, 0.06m);

        var findings = RuleRunner.Run<SampleEvidence>([new ThrowingRule(), new DuplicateDisagreementRule()], evidence);

        Assert.Equal(2, findings.Count);
        Assert.Equal("throwing|26K70012C|not evaluated", findings[0].Fingerprint);
        Assert.Equal(FindingLevel.Note, findings[0].Level);
        Assert.Contains("was not evaluated: the table is missing.", findings[0].Headline, StringComparison.Ordinal);
    }

    private static SampleEvidence Duplicates(decimal first, decimal second) => new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.002m)
        .Extract("A", first, 100m, 100m).Extract("B", second, 100m, 100m).Evidence();

    private static SampleEvidence Sucrose(decimal total, decimal free) => new SampleBuilder().Repeatability(QuantityCatalogue.Sucrose, 0.01m)
        .Extract("A", free, 100m, 100m, total: total).Evidence();

    private static ContestedReading Contested(string raw) => new()
    {
        QuantityId = QuantityCatalogue.GlucoseInExtract.Id,
        RawValue = raw,
        FileName = "sugars-2.csv",
        FileSha256 = "ab12",
        Line = 9,
        RowKey = "A",
    };

    private sealed class ThrowingRule : IRule<SampleEvidence>
    {
        public string Name => "throwing";

        public IEnumerable<Finding> Evaluate(SampleEvidence evidence) => throw new InvalidOperationException("the table is missing.");
    }
}
