using System.Text;

namespace LabPipeline.Reporting.Report;

/// <summary>The season report as one page that needs nothing else: no network, no script, figures inside.</summary>
internal static class SeasonReport
{
    public static string Html(ReportContent content)
    {
        var page = new HtmlPage();
        var trial = content.Data.Trial;
        page.Raw("<!DOCTYPE html>").Raw("<html lang=\"en\">")
            .Raw($"<head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><title>{HtmlPage.Encode($"{trial.TrialCode}: {trial.Title}, season {trial.Season}")}</title>")
            .Raw($"<style>{StyleSheet()}</style></head>")
            .Raw("<body><main>");
        FrontSection.Write(page, content);
        MethodsSection.Write(page, content);
        QualitySection.Write(page, content);
        TablesSection.Write(page, content);
        FiguresSection.Write(page, content);
        ConclusionSection.Write(page, content);
        AnnexSection.Write(page, content);
        page.Raw("</main></body></html>");
        return page.ToString();
    }

    private static string StyleSheet()
    {
        using var stream = typeof(SeasonReport).Assembly.GetManifestResourceStream("Report/report.css")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
