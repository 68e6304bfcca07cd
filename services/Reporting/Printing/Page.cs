namespace LabPipeline.Reporting.Printing;

/// <summary>A page ready to print, in millimetres. PDF and SVG are made from the same pages.</summary>
internal sealed record Page(double Width, double Height, IReadOnlyList<Mark> Marks)
{
    public const double A4Short = 210;
    public const double A4Long = 297;
}
