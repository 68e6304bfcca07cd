using LabPipeline.Reporting.Season;

namespace LabPipeline.Reporting.Report;

/// <summary>Means as they are, and as they would be without the results in doubt, side by side.</summary>
internal static class DoubtTables
{
    public static void Write(HtmlPage page, ReportContent content, ResponseAnalysis analysis)
    {
        var pulls = analysis.Pulls.Where(pull => pull is { WhyNone: null, WithoutDoubtful: not null }).ToList();
        var term = content.Analysis.Model.CloneFactor ?? content.Analysis.Model.Cells;
        if (pulls.Count == 0)
        {
            return;
        }

        var name = term.Replace(":", " x ", StringComparison.Ordinal);
        var table = new HtmlTable($"{analysis.Response.Title}: means of {name} with and without the results in doubt", [name, .. pulls.Select(pull => $"pull {pull.PullNo}\nwith, without")]);
        foreach (var label in pulls.SelectMany(pull => pull.MeansOf(term)?.Rows ?? []).Select(row => row.Label).Distinct())
        {
            table.Row([label.Replace(":", ", ", StringComparison.Ordinal), .. pulls.Select(pull => $"{Mean(analysis.Response, pull, term, label)}, {Mean(analysis.Response, pull.WithoutDoubtful!, term, label)}")]);
        }

        Tests(table, pulls);
        page.Table(table);
        foreach (var pull in pulls.Where(pull => pull.WithoutDoubtful!.WhyNone is not null))
        {
            page.Note($"Pull {pull.PullNo} without the results in doubt cannot be analysed: {pull.WithoutDoubtful!.WhyNone}.");
        }
    }

    private static void Tests(HtmlTable table, List<PullTables> pulls)
    {
        table.Foot(["plots", .. pulls.Select(pull => $"{pull.Plots}, {pull.WithoutDoubtful!.Plots}")]);
        foreach (var term in pulls.SelectMany(pull => pull.Anova!.Rows).Where(row => row.F is not null && row.Term != "block").Select(row => row.Term).Distinct())
        {
            table.Foot([$"p of {term.Replace(":", " x ", StringComparison.Ordinal)}", .. pulls.Select(pull => $"{P(pull, term)}, {P(pull.WithoutDoubtful!, term)}")]);
        }
    }

    private static string Mean(Response response, PullTables pull, string term, string label) => NumberText.Fixed(pull.MeansOf(term)?.Find(label)?.Back, response.Decimals);

    private static string P(PullTables pull, string term) => NumberText.P(pull.Anova?.Rows.FirstOrDefault(row => row.Term == term && row.F is not null)?.P);
}
