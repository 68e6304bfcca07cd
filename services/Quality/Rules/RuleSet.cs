namespace LabPipeline.Quality.Rules;

/// <summary>The rules in force, by what they look at.</summary>
public sealed class RuleSet
{
    public RuleSet(RuleLimits limits)
    {
        ForSamples =
        [
            new DuplicateDisagreementRule(), new DilutionSlipRule(), new NegativeSucroseRule(), new ImplausibleValueRule(),
            new ConflictingReExportRule(), new PeelTargetRule(limits), new ResultNotComputableRule(),
        ];
        ForPulls = [new MissingPullRule(limits), new IncompletePullRule(), new IncompleteSampleRule(), new LatePullRule(), new EarlyMeasurementRule(), new InstrumentSilentRule()];
        ForRuns = [new WeighingRule(limits), new FryBatchRule()];
        ForFiles = [new FileRefusedRule(), new UnknownBarcodeRule()];
        ForHeldFiles = [new HeldFileRule(limits)];
        ForParkedMessages = [new ParkedMessageRule()];
        ForAudits = [new WarehouseDamagedRule()];
        ForControls = [new ControlCheckRule()];
        ForOrders = [new BenchOrderRule()];
        ForCharts = [new ControlTrendRule()];
        ForChannels = [new DeliveryFailingRule()];
    }

    public IReadOnlyList<IRule<SampleEvidence>> ForSamples { get; }

    public IReadOnlyList<IRule<PullEvidence>> ForPulls { get; }

    public IReadOnlyList<IRule<RunEvidence>> ForRuns { get; }

    public IReadOnlyList<IRule<FileEvidence>> ForFiles { get; }

    public IReadOnlyList<IRule<HeldFileEvidence>> ForHeldFiles { get; }

    public IReadOnlyList<IRule<ParkedMessagesEvidence>> ForParkedMessages { get; }

    public IReadOnlyList<IRule<AuditEvidence>> ForAudits { get; }

    public IReadOnlyList<IRule<ControlEvidence>> ForControls { get; }

    public IReadOnlyList<IRule<OrderEvidence>> ForOrders { get; }

    public IReadOnlyList<IRule<ControlChartEvidence>> ForCharts { get; }

    public IReadOnlyList<IRule<DeliveryEvidence>> ForChannels { get; }
}
