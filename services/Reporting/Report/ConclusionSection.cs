namespace LabPipeline.Reporting.Report;

/// <summary>What follows, in plain words made from the results.</summary>
internal static class ConclusionSection
{
    public static void Write(HtmlPage page, ReportContent content)
    {
        page.Heading(2, "conclusions", "5 Conclusions")
            .Heading(3, "conclusions-keeping", "How long it kept").List(Conclusions.Keeping(content))
            .Heading(3, "conclusions-effects", "What made a difference").List(Conclusions.Effects(content))
            .Heading(3, "conclusions-limits", "How far this reaches").List(Conclusions.Reach(content));
    }
}
