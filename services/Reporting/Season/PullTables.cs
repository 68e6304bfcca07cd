using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Reporting.Season;

/// <summary>The tables of one response at one pull.</summary>
internal sealed record PullTables
{
    public required int PullNo { get; init; }

    public required int Day { get; init; }

    /// <summary>Plots with a value.</summary>
    public required int Plots { get; init; }

    /// <summary>Of them, those below the quantitation limit.</summary>
    public required int BelowLimit { get; init; }

    /// <summary>Plots with a value in doubt.</summary>
    public IReadOnlyList<PlotPull> InDoubt { get; init; } = [];

    /// <summary>The same pull without them; null where there are none.</summary>
    public PullTables? WithoutDoubtful { get; init; }

    /// <summary>Plain means of the cells, unadjusted, in the unit of the response; always there.</summary>
    public required IReadOnlyDictionary<string, (double Mean, int N)> Raw { get; init; }

    /// <summary>Null where nothing could be fitted; <see cref="WhyNone"/> says why.</summary>
    public AnovaTable? Anova { get; init; }

    public IReadOnlyList<MeansTable> Means { get; init; } = [];

    /// <summary>Percent; on the log scale that of a lognormal spread.</summary>
    public double? CoefficientOfVariation { get; init; }

    /// <summary>Residual standard deviation of plots on the scale of analysis, from which the coefficient is made.</summary>
    public double? ResidualSd { get; init; }

    /// <summary>The contrasts of the plan.</summary>
    public IReadOnlyList<PlannedAnswer> Planned { get; init; } = [];

    public ComparisonSet? AgainstStandard { get; init; }

    public string? WhyNotAgainstStandard { get; init; }

    public IReadOnlyList<ContrastEstimate> Contrasts { get; init; } = [];

    public ResidualChecks? Residuals { get; init; }

    public IReadOnlyList<PlotDiagnostic> Diagnostics { get; init; } = [];

    public string? WhyNone { get; init; }

    public MeansTable? MeansOf(string term) => Means.FirstOrDefault(table => table.Term == term);
}
