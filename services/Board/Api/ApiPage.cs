namespace LabPipeline.Board.Api;

/// <summary>A part of a list.</summary>
/// <param name="Items">The rows of this part.</param>
/// <param name="Page">Number of the part, from 1.</param>
/// <param name="Size">Rows of a whole part.</param>
/// <param name="Total">Rows of the whole list.</param>
public sealed record ApiPage<T>(IReadOnlyList<T> Items, int Page, int Size, int Total);
