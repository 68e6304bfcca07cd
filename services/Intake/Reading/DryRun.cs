using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Shows what a profile makes of a file before anything is stored.</summary>
public static class DryRun
{
    /// <summary>The first readings as they would be stored, and the outcome of the whole file.</summary>
    public static DryRunResult Read(Profile profile, Stream bytes, string fileName, int rows, ReadLimits limits, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        var sink = new FirstRows(rows);
        var outcome = FileReader.Read(profile, bytes, fileName, sink, limits, cancellationToken);
        return new DryRunResult(sink.Readings, outcome);
    }

    private sealed class FirstRows(int rows) : IReadingSink
    {
        private readonly List<ParsedReading> _readings = [];
        private int _rows;
        private int _lastLine;

        public IReadOnlyList<ParsedReading> Readings => _readings;

        public void Take(in ParsedReading reading)
        {
            _rows += reading.Line == _lastLine ? 0 : 1;
            _lastLine = reading.Line;
            if (_rows <= rows)
            {
                _readings.Add(reading.Kept());
            }
        }
    }
}
