using System.Globalization;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>One thing that happens; the numbers choose among a few names, contents and times.</summary>
internal sealed record Step(StepKind Kind, int One, int Other)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kind}({One},{Other})");
}
