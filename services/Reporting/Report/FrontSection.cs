using System.Globalization;

namespace LabPipeline.Reporting.Report;

/// <summary>Title, what was asked, what the answer is, and which data it stands on.</summary>
internal static class FrontSection
{
    private static readonly (string Id, string Name)[] Contents =
    [
        ("methods", "Methods"), ("quality", "Data quality"), ("tables", "Tables"), ("figures", "Figures"), ("conclusions", "Conclusions"), ("annexes", "Annexes"),
    ];

    public static void Write(HtmlPage page, ReportContent content)
    {
        var (trial, stamp, freeze) = (content.Data.Trial, content.Stamp, content.Data.Freeze);
        page.Raw($"<h1>{HtmlPage.Encode(trial.Title)}</h1>")
            .Raw($"<p class=\"sub\">{HtmlPage.Encode($"Trial {trial.TrialCode}, season {trial.Season}, {trial.Site}")}</p>")
            .Raw($"<p><strong>Question.</strong> {HtmlPage.Encode(trial.Question)}</p>")
            .Raw("<div class=\"answer\"><p><strong>Answer.</strong></p>");
        foreach (var sentence in Conclusions.Answer(content))
        {
            page.Paragraph(sentence);
        }

        page.Raw("</div>").Facts(
        [
            ("Report", stamp.Version is { } version ? $"version {version.ToString(CultureInfo.InvariantCulture)}, locked by {stamp.LockedBy}" : "draft, not locked"),
            ("Data frozen", $"{NumberText.Instant(freeze.At)}, after reading {NumberText.Whole(freeze.LastReadingId)} and change {NumberText.Whole(freeze.LastChangeId)}"),
            ("Plan", $"document {trial.PlanSha256[..Math.Min(16, trial.PlanSha256.Length)]}"),
            ("Software", stamp.Software),
            ("Random numbers", "none are used: every number follows from the data alone, so there is no seed to keep"),
        ]);
        page.Raw($"<nav aria-label=\"Contents\"><ol>{string.Concat(Contents.Select(entry => $"<li><a href=\"#{entry.Id}\">{entry.Name}</a></li>"))}</ol></nav>")
            .Note("Every mean links to the evidence behind it: samples, files and lines. The command 'evidence' of the station follows it to single readings and to who set what aside.");
    }
}
