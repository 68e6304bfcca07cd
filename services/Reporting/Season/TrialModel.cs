using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Reporting.Season;

/// <summary>The model that the plan's design commands. Nothing is chosen from the data.</summary>
internal sealed class TrialModel
{
    private const string SplitPlot = "split-plot";

    public TrialModel(SeasonData data)
    {
        Data = data;
        var factors = data.Factors().ToList();
        SingleLevel = [.. factors.Where(factor => factor.Count() == 1).Select(factor => factor.Key)];
        Factors = [.. factors.Where(factor => factor.Count() > 1).Select(factor => new TreatmentFactor(factor.Key, [.. factor.Select(level => level.Level)]))];
        MainPlotFactors = data.Trial is { Design: SplitPlot, MainPlotFactor: { } main } && Factors.Any(factor => factor.Name == main) ? [main] : [];
        Quantitative = factors.Where(factor => factor.First().Unit is not null && factor.Count() > 2)
            .ToDictionary(factor => factor.Key, factor => (IReadOnlyList<double>)[.. factor.Select(level => double.Parse(level.Level, CultureInfo.InvariantCulture))]);
        Questions = [.. data.Contrasts.GroupBy(fact => fact.Name).Select(group => new PlannedQuestion(
            group.Key, group.First().Factors, group.ToDictionary(fact => fact.Cell, fact => (double)fact.Coefficient), group.Min(fact => fact.StatedAt)))];
    }

    public SeasonData Data { get; }

    /// <summary>The contrasts of the plan, in its order.</summary>
    public IReadOnlyList<PlannedQuestion> Questions { get; }

    /// <summary>Factors with something to compare.</summary>
    public IReadOnlyList<TreatmentFactor> Factors { get; }

    /// <summary>Factors of one level, which nothing can be said about.</summary>
    public IReadOnlyList<string> SingleLevel { get; }

    public IReadOnlyList<string> MainPlotFactors { get; }

    /// <summary>Levels as numbers of the factors that are quantities.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<double>> Quantitative { get; }

    /// <summary>Name of the term of all treatment combinations: "clone:nitrogen".</summary>
    public string Cells => Term.Of([.. Factors.Select(factor => factor.Name)]).Name;

    public string? CloneFactor => Factors.Any(factor => factor.Name == Data.Trial.CloneFactor) ? Data.Trial.CloneFactor : null;

    public bool IsSplitPlot => Data.Trial.Design == SplitPlot;

    /// <summary>Why no model can be fitted to any response; null where one can.</summary>
    public string? WhyNone
    {
        get
        {
            var blocks = Data.Plots.Select(plot => plot.Block).Distinct().Count();
            return Factors.Count == 0 ? $"the trial has only one treatment ({string.Join(", ", Data.Levels.Select(level => level.Level))}): there is nothing to compare it with"
                : blocks < 2 ? $"the plan has {blocks} block: without a second one there is no error to test against"
                : null;
        }
    }

    /// <summary>The design as the statistics take it.</summary>
    public FieldTrialDesign Design(ResponseScale scale, IReadOnlyList<int> pulls) => new()
    {
        // A split-plot whose main-plot factor or whose others have one level is not one: the rest is compared within blocks.
        Layout = HasTwoSizes ? TrialLayout.SplitPlot : TrialLayout.RandomisedBlocks,
        Factors = Factors,
        MainPlotFactors = HasTwoSizes ? MainPlotFactors : [],
        Pulls = pulls.Count < 2 ? [] : [.. pulls.Select(pull => new PullDay(NameOf(pull), Data.DayOf(pull)))],
        Scale = scale,
    };

    public static string NameOf(int pull) => pull.ToString(CultureInfo.InvariantCulture);

    /// <summary>In words, as the methods section prints it.</summary>
    public string Statement()
    {
        var layout = Data.Trial.Design switch
        {
            SplitPlot => $"split-plot: {Data.Trial.MainPlotFactor} on main plots in randomised blocks, the other factors on plots within them; main plots are tested against block x main plot, the rest against plots within main plots",
            "factorial-rcbd" => "factorial in randomised complete blocks, every treatment tested against the variation between plots within blocks",
            _ => "randomised complete blocks, tested against the variation between plots within blocks",
        };
        return $"{layout}; factors {string.Join(" x ", Data.Factors().Select(factor => $"{factor.Key} ({factor.Count()})"))}";
    }

    private bool HasTwoSizes => IsSplitPlot && MainPlotFactors.Count > 0 && MainPlotFactors.Count < Factors.Count;
}
