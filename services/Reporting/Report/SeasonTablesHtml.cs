using LabPipeline.Reporting.Season;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Reporting.Report;

/// <summary>Tests pull by pull and over the season: treatment x time first.</summary>
internal static class SeasonTablesHtml
{
    public static void Write(HtmlPage page, ResponseAnalysis analysis)
    {
        if (analysis.Season is { } season)
        {
            Season(page, analysis, season);
        }

        PullTests(page, analysis);
    }

    private static void Season(HtmlPage page, ResponseAnalysis analysis, SeasonTables season)
    {
        if (season.WhyNone is { } why)
        {
            page.Raw("<div class=\"cannot\">").Paragraph($"The model over all pulls cannot be fitted: {why}.").Raw("</div>");
        }

        if (season.Analysis is not { } fit)
        {
            return;
        }

        if (fit.Tests is { } tests)
        {
            var corrected = fit.Corrected.ToDictionary(one => one.Term);
            var table = new HtmlTable($"{analysis.Response.Title}: tests over the whole season, interactions with time first", "term", "df", "error df", "F", "p", "split-plot in time: Greenhouse-Geisser p", "Huynh-Feldt p");
            foreach (var row in tests.Rows.OrderByDescending(row => row.Term.Contains(":pull", StringComparison.Ordinal)).ThenByDescending(row => row.Term.Split(':').Length))
            {
                var correction = corrected.GetValueOrDefault(row.Term);
                table.Row(row.Term.Replace(":", " x ", StringComparison.Ordinal), NumberText.Whole(row.Df), NumberText.Df(row.DenominatorDf), NumberText.Fixed(row.F, 2), NumberText.P(row.P),
                    NumberText.P(correction?.GreenhouseGeisserP), NumberText.P(correction?.HuynhFeldtP));
            }

            page.Table(table);
        }

        page.Note(Words(fit));
    }

    private static string Words(RepeatedAnalysis fit)
    {
        var candidates = string.Join("; ", fit.Candidates.Select(one => one.Aic is { } aic ? $"{one.Structure} {NumberText.Fixed(aic, 1)}" : $"{one.Structure} not fitted ({one.NotFitted})"));
        var sphericity = fit.Sphericity is { } test
            ? $" Sphericity: Greenhouse-Geisser epsilon {NumberText.Fixed(test.GreenhouseGeisser, 3)}, Huynh-Feldt {NumberText.Fixed(test.HuynhFeldt, 3)}{(test.MauchlyP is { } p ? $", Mauchly {NumberText.PWithName(p)}" : "")}."
            : fit.WhyNoSplitInTime is { } why ? $" No split-plot in time: {why}." : "";
        return $"Covariance between pulls{(fit.Model is { } model ? $": {model.Structure}" : "")}; AIC: {candidates}.{sphericity}";
    }

    private static void PullTests(HtmlPage page, ResponseAnalysis analysis)
    {
        var pulls = analysis.Pulls.Where(pull => pull.Anova is { Rows.Count: > 0 }).ToList();
        if (pulls.Count == 0)
        {
            return;
        }

        var table = new HtmlTable($"{analysis.Response.Title}: tests of each pull: F, p, and q over the pulls of the line", ["term", .. pulls.Select(pull => $"pull {pull.PullNo}")]);
        foreach (var term in pulls.SelectMany(pull => pull.Anova!.Rows).Where(row => row.F is not null && row.Term != "block").Select(row => row.Term).Distinct())
        {
            var rows = pulls.Select(pull => pull.Anova!.Rows.FirstOrDefault(row => row.Term == term && row.F is not null)).ToList();
            var shares = FalseShares([.. rows.Select(row => row?.P)]);
            table.RowOfHtml([HtmlPage.Encode(term.Replace(":", " x ", StringComparison.Ordinal)), .. rows.Zip(shares, (row, share) => row is not null
                ? $"<a href=\"#anova-{analysis.Response.Quantity.Name}\">{NumberText.Fixed(row.F, 2)}</a><br>{HtmlPage.Encode(NumberText.P(row.P))}<br>{HtmlPage.Encode($"q {NumberText.P(share)}")}" : NumberText.None)]);
        }

        page.Table(table);
    }

    /// <summary>Many pulls are many chances of a false claim: the share of false claims to expect among those with this p or less (Benjamini-Hochberg).</summary>
    private static IEnumerable<double?> FalseShares(IReadOnlyList<double?> p)
    {
        double[] known = [.. p.OfType<double>()];
        var adjusted = new Queue<double>(known.Length == 0 ? [] : AdjustedPValues.Of(known, PValueAdjustment.BenjaminiHochberg));
        return [.. p.Select(value => value is null ? (double?)null : adjusted.Dequeue())];
    }
}
