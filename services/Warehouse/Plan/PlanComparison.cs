using System.Globalization;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Plan.Rows;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Holds an offered plan against the stored one: what is new, what may change, and what would rewrite history.</summary>
/// <remarks>
/// Dates, expectations and descriptions may be corrected. What identifies samples or says how a plot was treated may not, because
/// labels are printed and readings taken; and nothing that was planned disappears.
/// </remarks>
internal sealed class PlanComparison(PlanRows stored, PlanRows offered)
{
    private const string Nothing = "nothing";

    public RowComparison<FactorLevelRow> Levels { get; } = RowComparison<FactorLevelRow>.Of(stored.Levels, offered.Levels, row => (row.Factor, row.Level));

    public RowComparison<BayRow> Bays { get; } = RowComparison<BayRow>.Of(stored.Bays, offered.Bays, row => row.BayCode);

    public RowComparison<PlotRow> Plots { get; } = RowComparison<PlotRow>.Of(stored.Plots, offered.Plots, row => row.PlotCode);

    public RowComparison<PullRow> Pulls { get; } = RowComparison<PullRow>.Of(stored.Pulls, offered.Pulls, row => row.PullNo);

    public RowComparison<SampleRow> Samples { get; } = RowComparison<SampleRow>.Of(stored.Samples, offered.Samples, row => (row.PullNo, row.PlotCode));

    public RowComparison<ExpectedRow> Expected { get; } = RowComparison<ExpectedRow>.Of(stored.Expected, offered.Expected, row => (row.PullNo, row.QuantityId));

    public ContrastComparison Contrasts { get; } = new(stored.Contrasts, offered.Contrasts);

    /// <summary>Differences that keep the offered plan from being loaded.</summary>
    public IReadOnlyList<PlanDifference> Refused() =>
    [
        .. Differing(FixedFactsOf(stored.Trial), FixedFactsOf(offered.Trial)),
        .. Levels.Removed.Select(row => Gone($"level {row.Level} of factor {row.Factor}")),
        .. Levels.Changed.SelectMany(pair => Differing($"unit of factor {pair.Stored.Factor}", pair.Stored.Unit, pair.Offered.Unit)).Distinct(),
        .. Bays.Removed.Select(row => Gone($"bay {row.BayCode}")),
        .. Plots.Removed.Select(row => Gone($"plot {row.PlotCode}")),
        .. Plots.Changed.SelectMany(pair => Differing(FactsOf(pair.Stored), FactsOf(pair.Offered))),
        .. Pulls.Removed.Select(row => Gone($"pull {row.PullNo}")),
        .. Samples.Changed.SelectMany(pair => Differing($"barcode of plot {pair.Stored.PlotCode} at pull {pair.Stored.PullNo}", pair.Stored.Barcode, pair.Offered.Barcode)),
        .. Expected.Removed.Where(row => Pulls.Removed.All(pull => pull.PullNo != row.PullNo)).Select(row => Gone(Describe(row))),
        .. Contrasts.Changed,
    ];

    /// <summary>Corrections that are taken over.</summary>
    public IReadOnlyList<PlanDifference> Corrected() =>
    [
        .. Differing(OpenFactsOf(stored.Trial), OpenFactsOf(offered.Trial)),
        .. Levels.Changed.SelectMany(pair => Differing($"position of level {pair.Stored.Level} of factor {pair.Stored.Factor}", pair.Stored.Position, pair.Offered.Position)),
        .. Bays.Changed.SelectMany(pair => Differing($"set point of bay {pair.Stored.BayCode}", pair.Stored.SetPointC, pair.Offered.SetPointC)),
        .. Pulls.Changed.SelectMany(pair => Differing(FactsOf(pair.Stored), FactsOf(pair.Offered))),
        .. Expected.Changed.SelectMany(pair => Differing(Describe(pair.Stored), pair.Stored.Readings, pair.Offered.Readings)),
    ];

    /// <summary>What is planned now and was not before, table by table.</summary>
    public IReadOnlyList<string> Added() =>
    [
        .. Levels.Added.Select(row => $"level {row.Level} of factor {row.Factor}"),
        .. Bays.Added.Select(row => $"bay {row.BayCode}"),
        .. Plots.Added.Select(row => $"plot {row.PlotCode}"),
        .. Pulls.Added.Select(row => $"pull {row.PullNo}"),
        .. Expected.Added.Select(Describe),
        .. Contrasts.Added.Select(row => row.Name).Distinct().Select(name => $"planned contrast {name}"),
    ];

    private static string Describe(ExpectedRow row) => $"readings of {QuantityCatalogue.Get(row.QuantityId).Name} expected at pull {row.PullNo}";

    private static IEnumerable<(string What, object? Value)> FixedFactsOf(TrialRow trial) =>
    [
        ("season", trial.Season),
        ("mark", trial.Mark),
        ("design", trial.Design),
        ("clone factor", trial.CloneFactor),
        ("main-plot factor", trial.MainPlotFactor),
    ];

    private static IEnumerable<(string What, object? Value)> OpenFactsOf(TrialRow trial) =>
    [
        ("title", trial.Title),
        ("question", trial.Question),
        ("site", trial.Site),
        ("reason for being incomplete", trial.IncompleteReason),
        ("day of harvest", trial.HarvestedOn),
        ("time zone", trial.TimeZone),
        ("standard clone", trial.StandardClone),
        ("tubers a sample", trial.TubersPerSample),
        ("slices a tuber", trial.SlicesPerTuber),
        ("extracts a sample", trial.ExtractsPerSample),
        ("dry matter relation", trial.DryMatterRelation),
        ("dark limit", trial.DarkBelowHunterL),
        ("severe score", trial.SevereFromScore),
    ];

    private static IEnumerable<(string What, object? Value)> FactsOf(PlotRow plot) =>
    [
        ($"block of plot {plot.PlotCode}", plot.Block),
        ($"main plot of plot {plot.PlotCode}", plot.MainPlot),
        ($"clone of plot {plot.PlotCode}", plot.CloneCode),
        ($"treatment of plot {plot.PlotCode}", plot.Treatment),
        ($"bay of plot {plot.PlotCode}", plot.BayCode),
    ];

    private static IEnumerable<(string What, object? Value)> FactsOf(PullRow pull) =>
    [
        ($"due day of pull {pull.PullNo}", pull.DueOn),
        ($"opening day of pull {pull.PullNo}", pull.OpensOn),
        ($"closing day of pull {pull.PullNo}", pull.ClosesOn),
    ];

    private static IEnumerable<PlanDifference> Differing(IEnumerable<(string What, object? Value)> before, IEnumerable<(string What, object? Value)> after) =>
        before.Zip(after).SelectMany(pair => Differing(pair.First.What, pair.First.Value, pair.Second.Value));

    private static IEnumerable<PlanDifference> Differing(string what, object? before, object? after) =>
        Equals(before, after) ? [] : [new PlanDifference(what, Shown(before), Shown(after))];

    private static PlanDifference Gone(string what) => new(what, "planned", Nothing);

    private static string Shown(object? value) => value switch
    {
        null => Nothing,
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString()!,
    };
}
