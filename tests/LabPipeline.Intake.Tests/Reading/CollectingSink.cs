using LabPipeline.Intake.Reading;

namespace LabPipeline.Intake.Tests.Reading;

internal sealed class CollectingSink : IReadingSink
{
    private readonly List<ParsedReading> _readings = [];

    public IReadOnlyList<ParsedReading> Readings => _readings;

    public void Take(in ParsedReading reading) => _readings.Add(reading.Kept());
}
