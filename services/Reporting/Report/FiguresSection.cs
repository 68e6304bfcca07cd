namespace LabPipeline.Reporting.Report;

/// <summary>The figures.</summary>
internal static class FiguresSection
{
    public static void Write(HtmlPage page, ReportContent content)
    {
        page.Heading(2, "figures", "4 Figures");
        foreach (var (figure, index) in content.Figures.Select((figure, index) => (figure, index)))
        {
            page.Raw($"<figure id=\"{figure.Id}\"><div{(figure.Panels.Count > 1 ? " class=\"panels\"" : "")}>");
            foreach (var panel in figure.Panels)
            {
                page.Raw(panel);
            }

            page.Raw($"</div><figcaption><strong>Figure {NumberText.Whole(index + 1)}. {HtmlPage.Encode(figure.Title)}.</strong> {HtmlPage.Encode(figure.Caption)}</figcaption></figure>");
        }

        page.Note("Chip photographs and the temperature and humidity log of the bays are not in the warehouse and are not shown.");
    }
}
