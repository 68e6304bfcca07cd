namespace LabPipeline.Board.Papers;

/// <summary>What somebody wants to print, as the address says it.</summary>
/// <param name="Trial">Code of the trial; null for the one that ends last.</param>
/// <param name="Pull">The pull; null for the first that has not closed.</param>
/// <param name="Bay">Code of one bay; null for all.</param>
/// <param name="Paper">One of <see cref="PaperKinds"/>; null for tags.</param>
/// <param name="First">Place of the first label on a sheet that was begun; null for 1.</param>
public sealed record PaperOrder(string? Trial, int? Pull, string? Bay, string? Paper, int? First);
