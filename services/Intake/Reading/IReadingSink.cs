namespace LabPipeline.Intake.Reading;

/// <summary>Takes readings while the file is still being read.</summary>
/// <remarks>What was taken counts only if the <see cref="ReadOutcome"/> is complete; otherwise all of it must be dropped.</remarks>
public interface IReadingSink
{
    void Take(in ParsedReading reading);
}
