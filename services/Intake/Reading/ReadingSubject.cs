namespace LabPipeline.Intake.Reading;

/// <summary>What a reading is about.</summary>
public enum ReadingSubject
{
    Sample,
    Control,
    FryBatch,
}
