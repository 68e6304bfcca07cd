namespace LabPipeline.Intake.Reading;

/// <summary>What would be stored of a file: its first readings, and how reading all of it would end.</summary>
public sealed record DryRunResult(IReadOnlyList<ParsedReading> Readings, ReadOutcome Outcome);
