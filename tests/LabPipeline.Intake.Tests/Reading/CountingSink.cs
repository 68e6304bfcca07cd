using LabPipeline.Intake.Reading;

namespace LabPipeline.Intake.Tests.Reading;

internal sealed class CountingSink : IReadingSink
{
    public decimal Sum { get; private set; }

    public void Take(in ParsedReading reading) => Sum += reading.Value;
}
