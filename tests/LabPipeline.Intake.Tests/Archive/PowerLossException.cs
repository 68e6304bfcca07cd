namespace LabPipeline.Intake.Tests.Archive;

/// <summary>The power went; nothing more happens on this disk.</summary>
internal sealed class PowerLossException() : Exception("the power went");
