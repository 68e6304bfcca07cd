using LabPipeline.Reporting.Season;

namespace LabPipeline.Reporting.Report;

/// <summary>Means by treatment and pull, one table a term.</summary>
internal static class MeansTablesHtml
{
    public static void Write(HtmlPage page, ReportContent content, ResponseAnalysis analysis)
    {
        page.Note($"Analysed on the scale: {analysis.ScaleStatement}.");
        Reasons(page, analysis);
        var model = content.Analysis.Model;
        if (model.WhyNone is not null)
        {
            RawMeans(page, content, analysis);
            return;
        }

        // Cells first; main effects of a minor response would only repeat them.
        var terms = analysis.Pulls.SelectMany(pull => pull.Means).Select(table => table.Term).Distinct().ToList();
        var whole = terms.Contains(model.Cells);
        foreach (var term in terms.Where(term => term == model.Cells || (analysis.Response.Major && !term.Contains(':', StringComparison.Ordinal)) || (!whole && term.Contains(':', StringComparison.Ordinal)))
            .OrderByDescending(term => term.Split(':').Length))
        {
            page.Table(Means(content, analysis, term, term == model.Cells));
        }

        DoubtTables.Write(page, content, analysis);
    }

    private static void Reasons(HtmlPage page, ResponseAnalysis analysis)
    {
        var reasons = analysis.Pulls.Where(pull => pull.WhyNone is not null).GroupBy(pull => pull.WhyNone!).ToList();
        foreach (var reason in reasons)
        {
            page.Raw("<div class=\"cannot\">").Paragraph($"Pull {string.Join(", ", reason.Select(pull => pull.PullNo))} cannot be analysed: {reason.Key}.").Raw("</div>");
        }

        foreach (var pull in analysis.Pulls.Where(pull => pull.Anova is { NotEstimable.Count: > 0 }))
        {
            page.Raw("<div class=\"cannot\">").Paragraph($"Pull {pull.PullNo}: {string.Join("; ", pull.Anova!.NotEstimable.Select(lost => $"{lost.Term} cannot be tested, {lost.Reason}"))}.").Raw("</div>");
        }
    }

    private static HtmlTable Means(ReportContent content, ResponseAnalysis analysis, string term, bool cells)
    {
        var pulls = analysis.Pulls.Where(pull => pull.MeansOf(term) is not null).ToList();
        var name = term.Replace(":", " x ", StringComparison.Ordinal);
        var table = new HtmlTable($"{analysis.Response.Title}: means of {name}", [name, .. pulls.Select(pull => $"pull {pull.PullNo}\nday {pull.Day}")]);
        var labels = pulls.SelectMany(pull => pull.MeansOf(term)!.Rows).Select(row => row.Label).Distinct();
        foreach (var label in labels)
        {
            table.RowOfHtml([HtmlPage.Encode(label.Replace(":", ", ", StringComparison.Ordinal)), .. pulls.Select(pull => Cell(content, analysis.Response, pull, pull.MeansOf(term)!.Find(label), cells, RestsOnDoubt(pull, term, label)))]);
        }

        Foot(table, analysis, pulls, term);
        return table;
    }

    private static string Cell(ReportContent content, Response response, PullTables pull, MeanRow? row, bool cells, bool inDoubt)
    {
        if (row?.Back is null)
        {
            return "<span class=\"letterless\">no mean</span>";
        }

        var value = NumberText.Fixed(row.Back, response.Decimals);
        var target = cells ? content.Evidence.Find(pull.PullNo, row.Label) : FormattableString.Invariant($"E{pull.PullNo:D2}");
        return $"<a href=\"#{target}\">{value}</a>{(row.Letters.Length == 0 ? "" : $"<sup>{row.Letters}</sup>")}{(inDoubt ? DoubtMark.Text : "")}";
    }

    private static bool RestsOnDoubt(PullTables pull, string term, string label)
    {
        var (factors, levels) = (term.Split(':'), label.Split(':'));
        return pull.InDoubt.Any(cell => factors.Zip(levels).All(pair => cell.Plot.Levels[pair.First] == pair.Second));
    }

    private static void Foot(HtmlTable table, ResponseAnalysis analysis, List<PullTables> pulls, string term)
    {
        void Line(string name, Func<PullTables, string> text) => table.Foot([name, .. pulls.Select(text)]);

        Line("SED", pull => Sed(pull.MeansOf(term)!.Precision));
        Line("df of SED", pull => NumberText.Df(pull.MeansOf(term)!.Precision?.Df));
        Line("LSD 5 %", pull => NumberText.Significant(pull.MeansOf(term)!.Precision?.Lsd, 3));
        Line("HSD 5 %", pull => NumberText.Significant(pull.MeansOf(term)!.Precision?.Hsd, 3));
        if (analysis.Response.Kind == ResponseScaleKind.Log)
        {
            Line("LSD as ratio", pull => pull.MeansOf(term)!.Precision is { } precision ? NumberText.Fixed(Math.Exp(precision.Lsd), 2) : NumberText.None);
        }

        Line("CV %", pull => NumberText.Fixed(pull.CoefficientOfVariation, 1));
        Line("plots", pull => NumberText.Whole(pull.Plots));
        if (pulls.Any(pull => pull.InDoubt.Count > 0))
        {
            Line($"in doubt {DoubtMark.Text}", pull => NumberText.Whole(pull.InDoubt.Count));
        }

        if (pulls.Any(pull => pull.BelowLimit > 0))
        {
            Line("below limit", pull => NumberText.Whole(pull.BelowLimit));
        }
    }

    private static string Sed(MeansPrecision? precision) => precision is null ? NumberText.None
        : precision.LargestSed - precision.SmallestSed < 1e-9 * precision.LargestSed ? NumberText.Significant(precision.LargestSed, 3)
        : $"{NumberText.Significant(precision.SmallestSed, 3)} to {NumberText.Significant(precision.LargestSed, 3)}";

    /// <summary>What there is when nothing can be compared: means as they are.</summary>
    private static void RawMeans(HtmlPage page, ReportContent content, ResponseAnalysis analysis)
    {
        var pulls = analysis.Pulls.Where(pull => pull.Plots > 0).ToList();
        var table = new HtmlTable($"{analysis.Response.Title}: plain means, number of plots in brackets", ["treatment", .. pulls.Select(pull => $"pull {pull.PullNo}\nday {pull.Day}")]);
        foreach (var label in pulls.SelectMany(pull => pull.Raw.Keys).Distinct())
        {
            table.RowOfHtml([HtmlPage.Encode(label), .. pulls.Select(pull => pull.Raw.TryGetValue(label, out var mean)
                ? $"<a href=\"#{content.Evidence.Find(pull.PullNo, label)}\">{NumberText.Fixed(mean.Mean, analysis.Response.Decimals)}</a> ({mean.N})" : NumberText.None)]);
        }

        page.Table(table);
    }
}
