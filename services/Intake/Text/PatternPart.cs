namespace LabPipeline.Intake.Text;

internal readonly record struct PatternPart(PatternField Field, int Least, int Most, char Symbol);
