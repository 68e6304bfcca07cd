using LabPipeline.Reporting.Figures;
using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Report;

/// <summary>Everything the sections of a report print.</summary>
internal sealed record ReportContent(SeasonData Data, TrialAnalysis Analysis, EvidenceIndex Evidence, IReadOnlyList<Figure> Figures, ReportStamp Stamp)
{
    public static ReportContent Of(SeasonData data, ReportStamp stamp)
    {
        var analysis = TrialAnalyser.Analyse(data);
        return new ReportContent(data, analysis, new EvidenceIndex(data), SeasonFigures.Of(data, analysis), stamp);
    }
}
