namespace LabPipeline.Intake.Text;

/// <summary>What to do with a local time that happened twice when clocks were put back.</summary>
public enum AmbiguousTime
{
    Refuse,
    Earlier,
    Later,
}
