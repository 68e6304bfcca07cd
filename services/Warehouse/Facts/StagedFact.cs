namespace LabPipeline.Warehouse.Facts;

/// <summary>A fact on its way into the warehouse: its place in the file, which decides between equals, and its run.</summary>
internal readonly record struct StagedFact(int Sequence, long Run, NewFact Fact);
