namespace LabPipeline.Reporting.Report;

/// <summary>The mark of what rests on results in doubt.</summary>
internal static class DoubtMark
{
    public const string Text = "†";
}
