namespace LabPipeline.Warehouse.Facts;

/// <summary>What became of the facts of one file.</summary>
/// <param name="New">Stored for the first time.</param>
/// <param name="Repeated">Already in effect with the same value: counted once.</param>
/// <param name="Conflicting">Another value is in effect for the same key: kept as contested.</param>
/// <param name="FirstReadingId">Lowest identifier given to a reading of this file, when there is one.</param>
/// <param name="LastReadingId">Highest identifier given to a reading of this file.</param>
public sealed record FactCounts(int New, int Repeated, int Conflicting, long? FirstReadingId, long? LastReadingId);
