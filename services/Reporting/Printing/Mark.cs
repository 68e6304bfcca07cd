namespace LabPipeline.Reporting.Printing;

/// <summary>Something on a printed page. Lengths in millimetres from the upper left corner; ink from 0 (none) to 1 (black).</summary>
internal abstract record Mark
{
    private Mark()
    {
    }

    /// <summary>A filled box.</summary>
    internal sealed record Fill(double Left, double Top, double Width, double Height, double Ink = 1) : Mark;

    /// <summary>The outline of a box.</summary>
    internal sealed record Frame(double Left, double Top, double Width, double Height, double Stroke = 0.2) : Mark;

    /// <summary>A line of text standing on its baseline; <paramref name="Size"/> is the font's size.</summary>
    internal sealed record Words(double Left, double Baseline, string Text, double Size, bool Bold = false) : Mark;
}
