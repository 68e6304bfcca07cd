using LabPipeline.Intake.Reading;
using LabPipeline.Station.Demo;

namespace LabPipeline.Station.Tests.Demo;

internal sealed record DemoReadFile(DemoFile File, ReadOutcome Outcome, IReadOnlyList<ParsedReading> Readings);
