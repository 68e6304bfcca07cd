namespace LabPipeline.Reporting.Printing;

/// <summary>A list to be printed and ticked off by hand.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Lines">What the reader must know before starting.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Sections">Parts that each begin on a new page; a row of one cell is a note across the table.</param>
/// <param name="Cautions">Printed at the foot of every page.</param>
internal sealed record TableSheet(
    string Title,
    IReadOnlyList<string> Lines,
    IReadOnlyList<TableColumn> Columns,
    IReadOnlyList<(string Heading, IReadOnlyList<IReadOnlyList<string>> Rows)> Sections,
    IReadOnlyList<string> Cautions);
