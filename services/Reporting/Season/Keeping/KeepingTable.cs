namespace LabPipeline.Reporting.Season.Keeping;

/// <summary>Keeping times under one limit.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="Clones">Over the other treatments.</param>
/// <param name="Cells">Each treatment combination.</param>
/// <param name="WhyNone">Why there are none; null where there are.</param>
internal sealed record KeepingTable(KeepingLimit Limit, IReadOnlyList<KeepingTime> Clones, IReadOnlyList<KeepingTime> Cells, string? WhyNone);
