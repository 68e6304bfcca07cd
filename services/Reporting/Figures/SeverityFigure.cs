using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>Shares of stem-end scores, pull by pull, one panel a clone.</summary>
internal static class SeverityFigure
{
    private const string Id = "fig-severity";
    private const int Scores = 6;

    public static Figure? Draw(SeasonData data)
    {
        if (data.Scores.Count == 0)
        {
            return null;
        }

        var cloneOf = data.Plots.ToDictionary(plot => plot.PlotCode, plot => plot.Levels[data.Trial.CloneFactor]);
        const string Title = "Stem-end defect: shares of scores";
        var panels = data.Factors().Single(factor => factor.Key == data.Trial.CloneFactor).Select((clone, index) =>
        {
            var facts = data.Scores.Where(fact => cloneOf[fact.PlotCode] == clone.Level).ToLookup(fact => fact.PullNo);
            var plot = Panel(data, facts);
            plot.Title(clone.Level, 14);
            return FigureStyle.Draw(plot, 360, 320, $"{Id}-{index + 1}", $"{Title}: {clone.Level}", Describe(data, facts));
        });
        return new Figure(Id, Title,
            $"Share of chips with each score, 0 none to 5 severe, from pale to dark; scores from {data.Trial.SevereFromScore} count as severe. Chips are counted, not plots: this shows, and tests nothing.", [.. panels]);
    }

    private static Plot Panel(SeasonData data, ILookup<int, ScoreFact> facts)
    {
        var plot = FigureStyle.NewPlot("pull", "% of chips");
        for (var place = 0; place < data.Pulls.Count; place++)
        {
            var (total, below) = (facts[data.Pulls[place].PullNo].Sum(fact => fact.Chips), 0.0);
            for (var score = 0; score < Scores && total > 0; score++)
            {
                var share = 100.0 * facts[data.Pulls[place].PullNo].Where(fact => fact.Score == score).Sum(fact => fact.Chips) / total;
                if (share > 0)
                {
                    var bar = plot.Add.Rectangle(place - 0.4, place + 0.4, below, below + share);
                    bar.FillColor = FigureStyle.Step(score, Scores);
                    bar.LineColor = Color.FromHex("#555555");
                    bar.LineWidth = 0.5f;
                    below += share;
                }
            }
        }

        AxisTicks.Named(plot.Axes.Bottom, data.Pulls.Select((pull, place) => ((double)place, pull.PullNo.ToString(CultureInfo.InvariantCulture))));
        plot.Axes.SetLimits(-0.7, data.Pulls.Count - 0.3, 0, 100);
        plot.ShowLegend(
            Enumerable.Range(0, Scores).Select(score => new LegendItem
            {
                LabelText = score.ToString(CultureInfo.InvariantCulture),
                FillColor = FigureStyle.Step(score, Scores),
                OutlineColor = Color.FromHex("#555555"),
                OutlineWidth = 0.5f,
            }).ToList(),
            Alignment.UpperRight);
        FigureStyle.Legend(plot);
        return plot;
    }

    private static string Describe(SeasonData data, ILookup<int, ScoreFact> facts) => string.Join("; ", facts.OrderBy(group => group.Key).Select(group =>
    {
        var total = group.Sum(fact => fact.Chips);
        var severe = 100.0 * group.Where(fact => fact.Score >= data.Trial.SevereFromScore).Sum(fact => fact.Chips) / total;
        return string.Create(CultureInfo.InvariantCulture, $"pull {group.Key}: {severe:0.0} % of {total} chips severe");
    })) + ".";
}
