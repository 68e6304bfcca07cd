namespace LabPipeline.Reporting.Figures;

/// <summary>A drawing of the report.</summary>
/// <param name="Id">Anchor, unique in the report.</param>
/// <param name="Title">What it shows; read out in its place.</param>
/// <param name="Caption">How to read it: what bars, lines and marks mean.</param>
/// <param name="Panels">One drawing, or several side by side, each a whole SVG element.</param>
internal sealed record Figure(string Id, string Title, string Caption, IReadOnlyList<string> Panels);
