namespace LabPipeline.Intake.Reading;

/// <summary>A cell's place in its row; an escaped one still holds doubled quotes.</summary>
internal readonly record struct DelimitedCell(int Start, int Length, bool Escaped);
