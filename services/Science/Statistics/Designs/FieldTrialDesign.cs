using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The design as the plan states it. The analysis follows it and guesses nothing from the data.</summary>
public sealed record FieldTrialDesign
{
    /// <summary>Names the analysis gives to the units.</summary>
    internal const string Block = "block";
    internal const string MainPlot = "main plot";
    internal const string Plot = "plot";
    internal const string Pull = "pull";

    public required TrialLayout Layout { get; init; }

    /// <summary>Treatment factors with all their levels, main-plot factors among them.</summary>
    public required IReadOnlyList<TreatmentFactor> Factors { get; init; }

    /// <summary>The factors assigned to main plots; empty unless the layout is a split-plot.</summary>
    public IReadOnlyList<string> MainPlotFactors { get; init; } = [];

    /// <summary>Pulls of the same plots, in order; empty for a single measurement.</summary>
    public IReadOnlyList<PullDay> Pulls { get; init; } = [];

    /// <summary>Scale of analysis; as measured by default.</summary>
    public ResponseScale Scale { get; init; } = ResponseScale.Measured;

    /// <summary>
    /// Covariance structures compared by AIC where pulls are repeated. The unstructured one is left to be asked for: it has m(m + 1)/2 parameters.
    /// </summary>
    public IReadOnlyList<CovarianceStructure> Structures { get; init; } =
        [CovarianceStructure.CompoundSymmetry, CovarianceStructure.Exponential, CovarianceStructure.PlotPlusExponential];

    /// <summary>Main effects and interactions of the treatment factors.</summary>
    internal IReadOnlyList<Term> Treatments => Term.Factorial([.. Factors.Select(factor => factor.Name)]);

    /// <summary>Units above the single measurement, largest first.</summary>
    internal IReadOnlyList<Term> Units => Layout == TrialLayout.SplitPlot ? [Term.Of(Block), Term.Of(MainPlot)] : [Term.Of(Block)];

    /// <exception cref="ArgumentException">The first fault found, with what was expected.</exception>
    internal void Validate()
    {
        if (Factors.Count == 0)
        {
            throw new ArgumentException("The design names no treatment factor; expected at least one.", nameof(Factors));
        }

        string[] reserved = [Block, MainPlot, Plot, Pull];
        if (Factors.FirstOrDefault(factor => reserved.Contains(factor.Name)) is { } taken)
        {
            throw new ArgumentException($"Found a treatment factor named '{taken.Name}'; that name stands for a unit of the trial, choose another.", nameof(Factors));
        }

        if (MainPlotFactors.FirstOrDefault(name => Factors.All(factor => factor.Name != name)) is { } unknown)
        {
            throw new ArgumentException($"Found main-plot factor '{unknown}'; expected one of {string.Join(", ", Factors.Select(factor => factor.Name))}.", nameof(MainPlotFactors));
        }

        var split = Layout == TrialLayout.SplitPlot;
        if (split != MainPlotFactors.Count > 0 || (split && MainPlotFactors.Count == Factors.Count))
        {
            throw new ArgumentException($"Found layout {Layout} with {MainPlotFactors.Count} main-plot factor(s) of {Factors.Count}; a split-plot needs at least one in each place, randomised blocks none.", nameof(MainPlotFactors));
        }

        if (Pulls.Count == 1 || Pulls.Select(pull => pull.Name).Distinct().Count() < Pulls.Count || Pulls.Select(pull => pull.Day).Distinct().Count() < Pulls.Count
            || !Pulls.All(pull => double.IsFinite(pull.Day)))
        {
            throw new ArgumentException($"Found pulls {string.Join(", ", Pulls.Select(pull => $"{pull.Name} (day {pull.Day})"))}; expected none, or at least two with different names and days.", nameof(Pulls));
        }
    }
}
