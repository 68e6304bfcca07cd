using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Reporting.Season;

/// <summary>Makes the tables of one response, pull by pull.</summary>
internal sealed class PullTableMaker(TrialModel model, PlotMeans means, ResponseScale scale)
{
    private Response Response => means.Response;

    public PullTables Make(int pull)
    {
        var cells = means.OfPull(pull);
        var bare = new PullTables
        {
            PullNo = pull,
            Day = model.Data.DayOf(pull),
            Plots = cells.Count,
            BelowLimit = cells.Count(cell => cell.BelowLimit),
            InDoubt = [.. cells.Where(cell => cell.InDoubt)],
            Raw = cells.GroupBy(cell => LabelOf(cell.Plot.Levels)).ToDictionary(group => group.Key, group => (group.Average(cell => cell.Value), group.Count())),
        };
        if (cells.Count == 0)
        {
            return bare with { WhyNone = "no plot was measured at this pull" };
        }

        if (bare.BelowLimit == cells.Count)
        {
            return bare with { WhyNone = $"all {cells.Count} plots lie below the quantitation limit: differences between them cannot be seen" };
        }

        if (model.WhyNone is { } none)
        {
            return bare with { WhyNone = none };
        }

        try
        {
            return Fill(bare, FieldTrialAnalysis.Analyse(model.Design(scale, [pull]), means.Rows(model, [pull])).Pulls[0], cells);
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            return bare with { WhyNone = MeansTables.Reason(fault) };
        }
    }

    private string LabelOf(Dictionary<string, string> levels) => model.Factors.Count == 0
        ? string.Join(":", levels.Values)
        : string.Join(":", model.Factors.Select(factor => levels[factor.Name]));

    private PullTables Fill(PullTables bare, PullAnalysis analysis, IReadOnlyList<PlotPull> cells)
    {
        var residual = analysis.Anova.Rows.LastOrDefault(row => row.Term == AnovaRow.Residual);
        double? sd = residual?.MeanSquare is { } square and > 0 ? Math.Sqrt(square) : null;
        var clones = model.CloneFactor is { } factor ? analysis.Means.FirstOrDefault(term => term.Term.Name == factor) : null;
        var (against, whyNot) = AgainstStandard(clones);
        var groups = cells.ToDictionary(cell => cell.Plot.PlotCode, cell => cell.Plot.Levels[model.Factors[0].Name]);
        return bare with
        {
            Anova = analysis.Anova,
            Means = [.. analysis.Means.Select(term => MeansTables.Of(term, Response, scale))],
            ResidualSd = sd,
            CoefficientOfVariation = Variation(sd, cells),
            AgainstStandard = against,
            WhyNotAgainstStandard = whyNot,
            Contrasts = [.. Trends(analysis)],
            Planned = PlannedAnswers.Of(model, analysis.Means),
            Diagnostics = analysis.Diagnostics,
            Residuals = ResidualChecks.Of(analysis.Diagnostics, plot => groups[plot], residual?.Df ?? 0),
        };
    }

    /// <summary>As measured: 100 sd / mean. On the log scale: 100 sqrt(exp(sd²) - 1), the spread of a lognormal. On the logit there is none.</summary>
    private double? Variation(double? sd, IReadOnlyList<PlotPull> cells)
    {
        var mean = cells.Average(cell => cell.Value);
        return (sd, Response.Kind) switch
        {
            (null, _) or (_, ResponseScaleKind.Share) => null,
            (_, ResponseScaleKind.Log) => 100 * Math.Sqrt(Math.Exp(sd.Value * sd.Value) - 1),
            _ => mean > 0 ? 100 * sd.Value / mean : null,
        };
    }

    private (ComparisonSet? Set, string? WhyNot) AgainstStandard(AdjustedMeans? clones)
    {
        if (clones is null)
        {
            return (null, "the trial has one clone only");
        }

        if (!Response.Major)
        {
            return (null, null);
        }

        try
        {
            return (AgainstControl.Dunnett(clones.ForComparison(), model.Data.Trial.StandardClone, MeansTables.Alpha, Sidedness.TwoSided), null);
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            return (null, MeansTables.Reason(fault));
        }
    }

    /// <summary>A factor that is a quantity was planned to be read as a trend.</summary>
    private IEnumerable<ContrastEstimate> Trends(PullAnalysis analysis) => model.Quantitative.SelectMany(factor =>
    {
        var term = analysis.Means.FirstOrDefault(entry => entry.Term.Name == factor.Key);
        return term is null
            ? []
            : PolynomialContrasts.Of(factor.Value, Math.Min(2, factor.Value.Count - 1))
                .Select(contrast => TryEstimate(term, contrast with { Label = $"{factor.Key}, {contrast.Label}" })).OfType<ContrastEstimate>();
    });

    private static ContrastEstimate? TryEstimate(AdjustedMeans term, Contrast contrast)
    {
        try
        {
            return PlannedContrasts.Estimate(term.ForComparison(), contrast, MeansTables.Alpha);
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            // A level without a mean leaves no trend; the means table says which.
            return null;
        }
    }
}
