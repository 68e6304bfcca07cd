using LabPipeline.Reporting.Season;

namespace LabPipeline.Reporting.Report;

/// <summary>The trial's own planned contrasts, at every pull and over the season.</summary>
internal static class PlannedTables
{
    public static void Write(HtmlPage page, ResponseAnalysis analysis)
    {
        var blocks = analysis.Pulls.Where(pull => pull.WhyNone is null).Select(pull => (Name: $"pull {pull.PullNo}", pull.Planned)).ToList();
        if (analysis.Season is { WhyNone: null } season)
        {
            blocks.Add(("season", season.Planned));
        }

        var table = Empty(analysis.Response);
        foreach (var name in blocks.SelectMany(block => block.Planned).Select(answer => answer.Question.Name).Distinct())
        {
            foreach (var (block, planned) in blocks)
            {
                table.Row([name, block, .. Cells(analysis.Response, planned.Single(answer => answer.Question.Name == name))]);
            }
        }

        if (!table.IsEmpty)
        {
            page.Table(table);
        }
    }

    private static HtmlTable Empty(Response response)
    {
        List<string> heads = ["question", "at", "estimate", "SE", "df", "t", "p", "95 % interval"];
        if (response.Kind != ResponseScaleKind.Measured)
        {
            heads.Add(response.Kind == ResponseScaleKind.Log ? "as ratio of geometric means" : "as odds ratio");
        }

        return new HtmlTable($"{response.Title}: planned contrasts, on the scale of analysis", heads) { RowHeads = 2 };
    }

    private static List<string> Cells(Response response, PlannedAnswer answer)
    {
        if (answer.Estimate is not { } found)
        {
            return ["not estimable: " + answer.WhyNone, .. Enumerable.Repeat(NumberText.None, response.Kind == ResponseScaleKind.Measured ? 5 : 6)];
        }

        List<string> cells =
        [
            NumberText.Significant(found.Estimate, 3), NumberText.Significant(found.StandardError, 3), NumberText.Df(found.Df), NumberText.Fixed(found.T, 2), NumberText.Significant(found.P, 3),
            $"{NumberText.Significant(found.Low, 3)} to {NumberText.Significant(found.High, 3)}",
        ];
        if (response.Kind != ResponseScaleKind.Measured)
        {
            string Ratio(double value) => NumberText.Fixed(Math.Exp(value / answer.Question.Size), 2);
            cells.Add($"{Ratio(found.Estimate)} ({Ratio(found.Low)} to {Ratio(found.High)})");
        }

        return cells;
    }
}
