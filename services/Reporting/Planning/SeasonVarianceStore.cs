using LabPipeline.Science.Quantities;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>Errors of an earlier trial, pull by pull, from the plot means in the warehouse.</summary>
public sealed class SeasonVarianceStore
{
    private static readonly SqlText FindDesign = SqlText.Load<SeasonVarianceStore>("find-trial-design");
    private static readonly SqlText ListLevels = SqlText.Load<SeasonVarianceStore>("list-trial-levels");
    private static readonly SqlText ListValues = SqlText.Load<SeasonVarianceStore>("list-plot-values");

    /// <returns>One entry a pull and error; empty when no pull has enough, null when the trial is not in the warehouse.</returns>
    public static async Task<IReadOnlyList<SeasonVariance>?> ListAsync(WarehouseSession session, string trialCode, Quantity quantity, WantedDifference wanted)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(quantity);
        ArgumentNullException.ThrowIfNull(wanted);
        var design = await session.FirstOrDefaultAsync<TrialDesignRow>(FindDesign, new { trialCode }).ConfigureAwait(false);
        if (design is null)
        {
            return null;
        }

        var levels = await session.QueryAsync<PlotLevelRow>(ListLevels, new { trialCode }).ConfigureAwait(false);
        var values = await session.QueryAsync<PlotValueRow>(ListValues, new { trialCode, quantityId = quantity.Id }).ConfigureAwait(false);
        return [.. values.GroupBy(value => value.PullNo).SelectMany(pull => OfPull(pull.Key, [.. pull], design, levels, wanted))];
    }

    private static IEnumerable<SeasonVariance> OfPull(
        int pullNo, IReadOnlyList<PlotValueRow> values, TrialDesignRow stored, IReadOnlyList<PlotLevelRow> levels, WantedDifference wanted)
    {
        var byPlot = levels.GroupBy(level => level.PlotCode).ToDictionary(
            plot => plot.Key, plot => (IReadOnlyDictionary<string, string>)plot.ToDictionary(level => level.Factor, level => level.Level));
        var factors = levels.GroupBy(level => level.Factor).Select(factor => new TreatmentFactor(factor.Key, [.. factor.Select(level => level.Level).Distinct()]));
        var design = new FieldTrialDesign
        {
            Layout = stored.Design == DesignNames.Of(DesignKind.SplitPlot) ? TrialLayout.SplitPlot : TrialLayout.RandomisedBlocks,
            Factors = [.. factors],
            MainPlotFactors = stored.MainPlotFactor is null ? [] : [stored.MainPlotFactor],
            Scale = wanted.Scale,
        };
        var plots = values.Where(value => !wanted.IsRatio || value.Value > 0)
            .Select(value => new PlotMean(value.Block, value.PlotCode, byPlot[value.PlotCode], value.Value, value.MainPlot)).ToList();
        if (plots.Select(plot => plot.Block).Distinct().Count() < 2)
        {
            yield break;
        }

        foreach (var error in FieldTrialAnalysis.Analyse(design, plots).Pulls[0].NextSeason.Where(error => error.Variance > 0))
        {
            yield return new SeasonVariance(pullNo, error.Error, error.Variance, error.Df, plots.Count, values.Count(value => value.BelowLimit == 1));
        }
    }
}
