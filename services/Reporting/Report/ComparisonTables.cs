using LabPipeline.Reporting.Season;
using LabPipeline.Science.Statistics.Comparisons;

namespace LabPipeline.Reporting.Report;

/// <summary>Planned comparisons: clones against the standard, trends over quantitative factors.</summary>
internal static class ComparisonTables
{
    public static void Write(HtmlPage page, ReportContent content, ResponseAnalysis analysis)
    {
        if (!analysis.Response.Major)
        {
            return;
        }

        PlannedTables.Write(page, analysis);
        AgainstStandard(page, content, analysis);
        Trends(page, analysis);
        Residuals(page, analysis);
    }

    private static void AgainstStandard(HtmlPage page, ReportContent content, ResponseAnalysis analysis)
    {
        var standard = content.Data.Trial.StandardClone;
        foreach (var reason in analysis.Pulls.Where(pull => pull.WhyNone is null && pull.WhyNotAgainstStandard is not null).GroupBy(pull => pull.WhyNotAgainstStandard!))
        {
            page.Raw("<div class=\"cannot\">").Paragraph($"Pull {string.Join(", ", reason.Select(pull => pull.PullNo))}: no comparison with the standard {standard}, {reason.Key}.").Raw("</div>");
        }

        var pulls = analysis.Pulls.Where(pull => pull.AgainstStandard is not null).ToList();
        if (pulls.Count == 0)
        {
            return;
        }

        var table = new HtmlTable($"{analysis.Response.Title}: {Meaning(analysis.Response)} against the standard {standard}, 95 % interval, p (Dunnett)", ["", .. pulls.Select(pull => $"pull {pull.PullNo}\nday {pull.Day}")]);
        foreach (var name in pulls.SelectMany(pull => pull.AgainstStandard!.Comparisons).Select(pair => pair.Name).Distinct())
        {
            table.RowOfHtml([HtmlPage.Encode(name.Replace(" - ", " against ", StringComparison.Ordinal)), .. pulls.Select(pull =>
                pull.AgainstStandard!.Comparisons.FirstOrDefault(pair => pair.Name == name) is { } pair ? Cell(analysis.Response, pair) : NumberText.None)]);
        }

        page.Table(table);
    }

    private static string Cell(Response response, PairComparison pair)
    {
        double Back(double value) => response.Kind == ResponseScaleKind.Measured ? value : Math.Exp(value);
        var decimals = response.Kind == ResponseScaleKind.Measured ? response.Decimals : 2;
        return $"{NumberText.Fixed(Back(pair.Difference), decimals)}<br>{NumberText.Fixed(Back(pair.Low), decimals)} to {NumberText.Fixed(Back(pair.High), decimals)}<br>{HtmlPage.Encode(NumberText.P(pair.P))}";
    }

    private static string Meaning(Response response) => response.Kind switch
    {
        ResponseScaleKind.Log => "ratio of geometric means",
        ResponseScaleKind.Share => "odds ratio of the adjusted share",
        _ => "difference of means",
    };

    private static void Trends(HtmlPage page, ResponseAnalysis analysis)
    {
        var pulls = analysis.Pulls.Where(pull => pull.Contrasts.Count > 0).ToList();
        if (pulls.Count == 0)
        {
            return;
        }

        var table = new HtmlTable($"{analysis.Response.Title}: planned trends, F and p", ["trend", .. pulls.Select(pull => $"pull {pull.PullNo}")]);
        foreach (var label in pulls.SelectMany(pull => pull.Contrasts).Select(contrast => contrast.Label).Distinct())
        {
            table.RowOfHtml([HtmlPage.Encode(label), .. pulls.Select(pull => pull.Contrasts.FirstOrDefault(contrast => contrast.Label == label) is { } contrast
                ? $"{NumberText.Fixed(contrast.F, 2)}<br>{HtmlPage.Encode(NumberText.P(contrast.P))}" : NumberText.None)]);
        }

        page.Table(table);
    }

    private static void Residuals(HtmlPage page, ResponseAnalysis analysis)
    {
        var pulls = analysis.Pulls.Where(pull => pull.Residuals is not null).ToList();
        if (pulls.Count == 0)
        {
            return;
        }

        var table = new HtmlTable($"{analysis.Response.Title}: residuals of each pull", ["", .. pulls.Select(pull => $"pull {pull.PullNo}")]);
        table.Row(["normal? Shapiro-Wilk p", .. pulls.Select(pull => NumberText.P(pull.Residuals!.Normality?.P))])
            .Row(["equal spread? Brown-Forsythe p", .. pulls.Select(pull => NumberText.P(pull.Residuals!.EqualSpread?.P))])
            .Row(["farthest plot", .. pulls.Select(pull => pull.Residuals!.FarthestPlot ?? NumberText.None)])
            .Row(["its studentised residual", .. pulls.Select(pull => NumberText.Fixed(pull.Residuals!.FarthestT, 2))])
            .Row(["p for the farthest of all", .. pulls.Select(pull => NumberText.P(pull.Residuals!.FarthestP))]);
        page.Table(table);
    }
}
