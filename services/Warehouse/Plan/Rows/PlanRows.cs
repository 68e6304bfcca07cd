namespace LabPipeline.Warehouse.Plan.Rows;

/// <summary>A plan as the rows of its tables.</summary>
internal sealed record PlanRows
{
    public required TrialRow Trial { get; init; }

    public required IReadOnlyList<FactorLevelRow> Levels { get; init; }

    public required IReadOnlyList<BayRow> Bays { get; init; }

    public required IReadOnlyList<PlotRow> Plots { get; init; }

    public required IReadOnlyList<PullRow> Pulls { get; init; }

    public required IReadOnlyList<SampleRow> Samples { get; init; }

    public required IReadOnlyList<ExpectedRow> Expected { get; init; }

    public required IReadOnlyList<ContrastRow> Contrasts { get; init; }

    public static PlanRows Of(TrialPlan plan, DateTimeOffset now) => new()
    {
        Trial = TrialOf(plan, now),
        Levels =
        [
            .. plan.Design.Factors
                .SelectMany(factor => factor.Levels.Select(level => (factor, level)))
                .Select((pair, index) => new FactorLevelRow
                {
                    TrialCode = plan.Code,
                    Factor = pair.factor.Name,
                    Level = pair.level,
                    Unit = pair.factor.Unit,
                    Position = index + 1,
                }),
        ],
        Bays = [.. plan.Bays.Select(bay => new BayRow { TrialCode = plan.Code, BayCode = bay.Code, SetPointC = bay.SetPointCelsius })],
        Plots = [.. plan.Plots.Select(plot => PlotOf(plan, plot))],
        Pulls =
        [
            .. plan.Pulls.Select(pull => new PullRow
            {
                TrialCode = plan.Code,
                PullNo = pull.Number,
                DueOn = pull.DueOn,
                OpensOn = pull.OpensOn,
                ClosesOn = pull.ClosesOn,
            }),
        ],
        Samples = [.. PlanSamples.Of(plan).Select(sample => SampleOf(plan, sample))],
        Expected =
        [
            .. plan.Expected.Select(expected => new ExpectedRow
            {
                TrialCode = plan.Code,
                PullNo = expected.PullNumber,
                QuantityId = expected.Quantity.Id,
                Readings = expected.Readings,
            }),
        ],
        Contrasts = ContrastRow.Of(plan, now),
    };

    public static IEnumerable<PlotLevelRow> LevelsOf(TrialPlan plan, IEnumerable<PlotRow> plots)
    {
        var byCode = plan.Plots.ToDictionary(plot => plot.Code, StringComparer.Ordinal);
        return plots.SelectMany(row => byCode[row.PlotCode].Levels.Select(level => new PlotLevelRow(plan.Code, row.PlotCode, level.Key, level.Value)));
    }

    private static TrialRow TrialOf(TrialPlan plan, DateTimeOffset now) => new()
    {
        TrialCode = plan.Code,
        Title = plan.Title,
        Question = plan.Question,
        Season = plan.Season,
        Mark = plan.Mark,
        Site = plan.Site,
        Design = DesignNames.Of(plan.Design.Kind),
        CloneFactor = plan.Design.CloneFactor,
        MainPlotFactor = plan.Design.MainPlotFactor,
        IncompleteReason = plan.Design.IncompleteReason,
        HarvestedOn = plan.HarvestedOn,
        TimeZone = plan.TimeZone,
        StandardClone = plan.Rules.StandardClone,
        TubersPerSample = plan.SampleSize.Tubers,
        SlicesPerTuber = plan.SampleSize.SlicesPerTuber,
        ExtractsPerSample = plan.SampleSize.Extracts,
        DryMatterRelation = plan.Rules.DryMatterRelation,
        DarkBelowHunterL = plan.Rules.DarkBelowHunterL,
        SevereFromScore = plan.Rules.SevereFromScore,
        PlanSha256 = plan.Sha256,
        LoadedAt = now,
    };

    private static PlotRow PlotOf(TrialPlan plan, TrialPlot plot) => new()
    {
        TrialCode = plan.Code,
        PlotCode = plot.Code,
        Block = plot.Block,
        MainPlot = plot.MainPlot,
        CloneCode = plan.CloneOf(plot),
        Treatment = plan.TreatmentOf(plot),
        BayCode = plot.BayCode,
    };

    private static SampleRow SampleOf(TrialPlan plan, PlannedSample sample) => new()
    {
        Barcode = sample.Barcode.Text,
        TrialCode = plan.Code,
        PlotCode = sample.Plot.Code,
        PullNo = sample.Pull.Number,
        RunningNo = sample.RunningNumber,
    };
}
