using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Report;

/// <summary>Annexes: full analyses of variance, the evidence behind every mean, the files, the words used.</summary>
internal static class AnnexSection
{
    private static readonly (string Term, string Meaning)[] Glossary =
    [
        ("pull", "scheduled removal of samples from storage"), ("plot", "the piece of field a treatment was given to; the unit of analysis"),
        ("SED", "standard error of a difference of two means"), ("LSD", "least significant difference: for one planned comparison"), ("HSD", "Tukey's critical difference: for all pairs together"),
        ("CV", "coefficient of variation between plots of one treatment"), ("quantitation limit", "level below which a value is known only to lie below it"),
        ("geometric mean", "the logarithms' mean carried back; below the plain mean where values are skewed"),
    ];

    public static void Write(HtmlPage page, ReportContent content)
    {
        page.Heading(2, "annexes", "6 Annexes").Heading(3, "annex-anova", "A Analyses of variance in full");
        foreach (var analysis in content.Analysis.Responses)
        {
            Anova(page, analysis);
        }

        page.Raw("<div class=\"evidence\">");
        Evidence(page, content);
        Files(page, content.Data);
        page.Raw("</div>").Heading(3, "annex-words", "D Words used").Facts(Glossary)
            .Heading(3, "annex-data", "E Data")
            .Paragraph("Plot means and raw readings: 'station export' writes them as CSV, Parquet or a workbook with a data dictionary; the numbers here follow from the plot means.");
    }

    private static void Anova(HtmlPage page, ResponseAnalysis analysis)
    {
        var pulls = analysis.Pulls.Where(pull => pull.Anova is { Rows.Count: > 0 }).ToList();
        if (pulls.Count == 0)
        {
            return;
        }

        var table = new HtmlTable($"{analysis.Response.Title}, scale: {analysis.ScaleStatement}", "pull", "stratum", "term", "df", "sum of squares", "mean square", "F", "error df", "p", "tested against")
        {
            RowHeads = 3,
            Id = $"anova-{analysis.Response.Quantity.Name}",
        };
        foreach (var (pull, row) in pulls.SelectMany(pull => pull.Anova!.Rows.Select(row => (pull, row))))
        {
            table.Row(NumberText.Whole(pull.PullNo), row.Stratum, row.Term, NumberText.Whole(row.Df), NumberText.Significant(row.SumOfSquares, 6), NumberText.Significant(row.MeanSquare, 6),
                row.NotTested is { } why ? why : NumberText.Fixed(row.F, 2), NumberText.Df(row.DenominatorDf), NumberText.P(row.P), row.TestedAgainst ?? "");
        }

        page.Table(table);
    }

    private static void Evidence(HtmlPage page, ReportContent content)
    {
        var responses = content.Analysis.Responses.Select(one => one.Response).ToList();
        var results = content.Data.Results.ToLookup(result => result.Barcode);
        var sources = content.Data.Sources.ToLookup(source => source.Barcode);
        var numbers = content.Data.Files.Select((file, index) => (file.FileId, Number: index + 1)).ToDictionary(pair => pair.FileId, pair => pair.Number);
        page.Heading(3, "annex-evidence", "B Evidence")
            .Note($"One group for each treatment combination at each pull. Values are results of single samples, unrounded ones are in the export; the line below each sample names the files its readings came from, numbered as in annex C, with the first and last line and the number of readings in effect. {DoubtMark.Text}: in doubt, beside a failed control that nobody has released.");
        foreach (var pull in content.Evidence.Groups.GroupBy(group => group.PullNo))
        {
            var table = new HtmlTable($"Pull {pull.Key}", ["evidence", "treatment", "sample", "plot", .. responses.Select(response => response.Title)])
            {
                RowHeads = 3,
                Id = FormattableString.Invariant($"E{pull.Key:D2}"),
            };
            foreach (var (group, sample, index) in pull.SelectMany(group => group.Samples.Select((sample, index) => (group, sample, index))))
            {
                var values = results[sample.Barcode].ToDictionary(result => result.QuantityId);
                table.RowOfHtml(
                [
                    index == 0 ? group.Id : "",
                    index == 0 ? HtmlPage.Encode(group.Cell.Replace(":", ", ", StringComparison.Ordinal)) : "",
                    HtmlPage.Encode(sample.Barcode),
                    HtmlPage.Encode(sample.PlotCode),
                    .. responses.Select(response => HtmlPage.Encode(Value(response, values))),
                ], index == 0 ? group.Id : "");
                if (sources.Contains(sample.Barcode))
                {
                    table.Under($"{HtmlPage.Encode(sample.Barcode)} from {Lines(sources[sample.Barcode], numbers)}");
                }
            }

            page.Table(table);
        }
    }

    private static string Value(Response response, Dictionary<int, ResultFact> values) => !values.TryGetValue(response.Quantity.Id, out var result) ? ""
        : (result.BelowLimit ? "< " : "") + NumberText.Fixed(result.Value, response.Decimals + 1) + (result.InDoubt ? DoubtMark.Text : "");

    private static string Lines(IEnumerable<SourceFact> sources, Dictionary<int, int> numbers) => string.Join(" ", sources.OrderBy(source => numbers[source.FileId]).Select(source =>
        $"<a href=\"#F{numbers[source.FileId]}\">F{numbers[source.FileId]}</a>:{NumberText.Whole(source.FirstLine)}{(source.LastLine > source.FirstLine ? $"–{NumberText.Whole(source.LastLine)}" : "")}({NumberText.Whole(source.Readings)})"));

    private static void Files(HtmlPage page, SeasonData data)
    {
        var table = new HtmlTable("Files", "no.", "name", "kind", "profile, version", "method", "SHA-256 of its bytes") { Class = "text" };
        foreach (var (file, index) in data.Files.Select((file, index) => (file, index)))
        {
            table.RowOfHtml([$"F{NumberText.Whole(index + 1)}", .. new[] { file.Name, file.Kind, $"{file.Profile} {file.ProfileVersion}", file.Method ?? "", file.Sha256 }.Select(HtmlPage.Encode)], $"F{NumberText.Whole(index + 1)}");
        }

        page.Heading(3, "annex-files", "C Files").Table(table);
    }
}
