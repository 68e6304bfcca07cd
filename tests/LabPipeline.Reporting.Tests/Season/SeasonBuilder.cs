using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;
using LabPipeline.Warehouse.Plan.Rows;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Reporting.Tests.Season;

/// <summary>Makes an invented season of clones and nitrogen rates in randomised blocks. Values follow from a plot's place alone.</summary>
internal sealed record SeasonBuilder
{
    public IReadOnlyList<string> Clones { get; init; } = ["KT-1", "KT-2", "KT-3"];

    public IReadOnlyList<string> Rates { get; init; } = ["100", "200"];

    public int Blocks { get; init; } = 4;

    public IReadOnlyList<int> Days { get; init; } = [30, 90, 150];

    /// <summary>Pulls without any sample result.</summary>
    public IReadOnlyList<int> MissingPulls { get; init; } = [];

    /// <summary>Whether every glucose result lies below its limit.</summary>
    public bool AllBelowLimit { get; init; }

    public IReadOnlyList<ControlLimitRow> ControlLimits { get; init; } = [];

    public IReadOnlyList<ContrastFact> Contrasts { get; init; } = [];

    /// <summary>Plots whose glucose of the first pull is in doubt.</summary>
    public IReadOnlyList<string> DoubtfulPlots { get; init; } = [];

    private static readonly DateOnly Harvest = new(2025, 9, 9);

    public SeasonData Build()
    {
        var plots = Enumerable.Range(1, Blocks).SelectMany(block => Clones.SelectMany((clone, c) => Rates.Select((rate, r) => new PlotFact
        {
            PlotCode = FormattableString.Invariant($"{block}{(c * Rates.Count) + r + 1:D2}"),
            Block = block.ToString(CultureInfo.InvariantCulture),
            BayCode = "B1",
            Levels = new Dictionary<string, string> { ["clone"] = clone, ["nitrogen"] = rate },
        }))).ToList();
        var pulls = Days.Select((day, index) => new PullFact { PullNo = index + 1, DueOn = Harvest.AddDays(day), OpensOn = Harvest.AddDays(day), ClosesOn = Harvest.AddDays(day + 4) }).ToList();
        var samples = pulls.SelectMany(pull => plots.Select(plot => new SampleFact
        {
            Barcode = $"25AA{pull.PullNo}{plot.PlotCode}",
            PlotCode = plot.PlotCode,
            PullNo = pull.PullNo,
            Readings = MissingPulls.Contains(pull.PullNo) ? 0 : 4,
            FirstMeasured = MissingPulls.Contains(pull.PullNo) ? null : At(pull),
            LastMeasured = MissingPulls.Contains(pull.PullNo) ? null : At(pull),
        })).ToList();
        return new SeasonData
        {
            Freeze = new FrozenAt { At = new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero), LastReadingId = 9000, LastChangeId = 7 },
            Trial = Trial(),
            Levels = [.. Clones.Select((clone, index) => new LevelFact { Factor = "clone", Level = clone, Position = index + 1 }),
                .. Rates.Select((rate, index) => new LevelFact { Factor = "nitrogen", Level = rate, Unit = "kg/ha", Position = Clones.Count + index + 1 })],
            Bays = [new BayFact { BayCode = "B1", SetPointC = 8.9m }],
            Plots = plots,
            Pulls = pulls,
            Samples = samples,
            Results = [.. samples.Where(sample => sample.Readings > 0).SelectMany(sample => Results(sample, plots.Single(plot => plot.PlotCode == sample.PlotCode)))],
            Expected = [.. pulls.Select(pull => new ExpectedFact { PullNo = pull.PullNo, QuantityId = QuantityCatalogue.HunterL.Id, Readings = 4 })],
            Files = [new FileFact { FileId = 1, Name = "a <b>.csv", Sha256 = new string('a', 64), Kind = "sugar", Profile = "analyser", ProfileVersion = 2, Method = "glucose 3", MethodFacts = """{"range":"to 60 mg/dL"}""" }],
            Sources = [.. samples.Where(sample => sample.Readings > 0).Select((sample, index) => new SourceFact { Barcode = sample.Barcode, FileId = 1, FirstLine = index + 2, LastLine = index + 2, Readings = 4 })],
            Controls = [.. Enumerable.Range(0, 25).Select(index => new ControlFact { Instrument = "analyser 1", Material = "low", QuantityId = QuantityCatalogue.GlucoseInExtract.Id, Value = 0.05m + (0.0002m * ((index * 7) % 5)), MeasuredAt = At(pulls[0]).AddHours(index), FileId = 1, Line = index })],
            Grid = [.. samples.Select(sample => new SeasonGridCell { PullNo = sample.PullNo, PlotCode = sample.PlotCode, Quantity = "hunter_l", ReadingsExpected = 4, Readings = sample.Readings, State = sample.Readings > 0 ? MeasurementStates.Done : MeasurementStates.Missing })],
            ControlLimits = ControlLimits,
            Contrasts = Contrasts,
            NotInEffect = [],
            Alerts = [],
            Changes = [],
            Scores = [.. samples.Where(sample => sample.Readings > 0).SelectMany(sample => new[] { new ScoreFact { PlotCode = sample.PlotCode, PullNo = sample.PullNo, Score = 0, Chips = 8 }, new ScoreFact { PlotCode = sample.PlotCode, PullNo = sample.PullNo, Score = 3, Chips = 2 } })],
            Thresholds = [],
            Repeatability = [],
        };
    }

    /// <summary>A spread that looks like chance and is the same everywhere: the fraction of a multiple of the golden ratio.</summary>
    public static double Noise(int seed)
    {
        var part = seed * 0.6180339887498949;
        return part - Math.Floor(part) - 0.5;
    }

    private static DateTimeOffset At(PullFact pull) => new(pull.DueOn.ToDateTime(new TimeOnly(15, 0)), TimeSpan.Zero);

    private IEnumerable<ResultFact> Results(SampleFact sample, PlotFact plot)
    {
        var (clone, rate, seed) = (Clones.ToList().IndexOf(plot.Levels["clone"]), Rates.ToList().IndexOf(plot.Levels["nitrogen"]), int.Parse(plot.PlotCode, CultureInfo.InvariantCulture) + (1000 * sample.PullNo));
        var glucose = 0.03 * Math.Exp((0.3 * rate) + (clone * 0.5 * sample.PullNo) + (0.3 * Noise(seed)));
        yield return Result(sample, QuantityCatalogue.Glucose, AllBelowLimit ? 0.025 : glucose, AllBelowLimit) with { InDoubt = sample.PullNo == 1 && DoubtfulPlots.Contains(sample.PlotCode) };
        yield return Result(sample, QuantityCatalogue.MeanHunterL, 50 - (4 * Math.Log(glucose)) + Noise(3 * seed), false);
        yield return Result(sample, QuantityCatalogue.UndesirableChips, 10 * ((seed * 7) % 5), false);
    }

    private static ResultFact Result(SampleFact sample, Quantity quantity, double value, bool below) => new()
    {
        Barcode = sample.Barcode,
        QuantityId = quantity.Id,
        Value = (decimal)Math.Round(value, 9),
        BelowLimit = below,
        N = 2,
        Basis = "mean of 2",
    };

    private TrialRow Trial() => new()
    {
        TrialCode = "AA-25",
        Title = "Two rates <on> three clones",
        Question = "Which keeps?",
        Season = 2025,
        Site = "North field",
        Design = "factorial-rcbd",
        CloneFactor = "clone",
        HarvestedOn = Harvest,
        TimeZone = "America/Chicago",
        StandardClone = Clones[0],
        TubersPerSample = 5,
        SlicesPerTuber = 2,
        ExtractsPerSample = 2,
        DryMatterRelation = "dry_matter_von_scheele_1937",
        DarkBelowHunterL = 55,
        SevereFromScore = 3,
        PlanSha256 = new string('b', 64),
    };
}
