namespace LabPipeline.Intake.Folders;

/// <summary>How long a file has kept its size and time of change, by a clock that never jumps.</summary>
/// <param name="Bytes">Size when it last changed.</param>
/// <param name="ModifiedAt">Time of change the file system reports; compared for equality only.</param>
/// <param name="QuietFor">How long both have stayed as they are.</param>
public readonly record struct Observation(long Bytes, DateTimeOffset ModifiedAt, TimeSpan QuietFor);
