namespace LabPipeline.Intake.Reading;

/// <summary>A row set aside, with the first reason why.</summary>
public sealed record ParkedRow(int Line, Fault Fault);
