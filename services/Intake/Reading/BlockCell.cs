namespace LabPipeline.Intake.Reading;

/// <summary>A value's place in its block and the line it stood on; line 0 when the block has no such key.</summary>
internal readonly record struct BlockCell(int Start, int Length, int Line);
