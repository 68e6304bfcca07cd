namespace LabPipeline.Intake.Text;

internal enum PatternField
{
    Literal,
    Year,
    Month,
    Day,
    Hour,
    Minute,
    Second,
    Fraction,
    Zulu,
    Offset,
}
