namespace LabPipeline.Reporting.Printing;

/// <summary>A column of a printed table.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Share">Its width as a share of the table's; all shares together make 1.</param>
/// <param name="Bold">Whether its cells are bold.</param>
internal sealed record TableColumn(string Title, double Share, bool Bold = false);
