using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Station.Demo;

namespace LabPipeline.Station.Tests.Demo;

/// <summary>The scenario, and its files read by the profiles it brings.</summary>
public sealed class DemoSeason
{
    public DemoSeason()
    {
        Scenario = DemoScenario.Create();
        Profiles =
        [
            .. Scenario.Documents.Where(document => document.Folder.StartsWith("profiles/", StringComparison.Ordinal))
                .Select(document => (document.Folder["profiles/".Length..], ProfileDocument.Parse(document.Text, document.Name))),
        ];
        Read = [.. Scenario.Files.Select(ReadFile)];
        Readings = [.. Read.Where(file => file.Outcome.State == ReadState.Complete).SelectMany(file => file.Readings.Select(reading => (file.File, reading)))];
    }

    public DemoScenario Scenario { get; }

    public IReadOnlyList<(string Kind, ProfileResult Result)> Profiles { get; }

    internal IReadOnlyList<DemoReadFile> Read { get; }

    /// <summary>Readings of all files that could be read.</summary>
    public IReadOnlyList<(DemoFile File, ParsedReading Reading)> Readings { get; }

    /// <summary>Readings as the warehouse keeps them: the first for each key.</summary>
    public IEnumerable<ParsedReading> InEffect => Readings.DistinctBy(entry => Key(entry.Reading)).Select(entry => entry.Reading);

    public static (string Instrument, string Run, string RowKey, int Quantity) Key(ParsedReading reading) =>
        (reading.Instrument, reading.Run, reading.RowKey.ToString(), reading.Quantity.Id);

    internal DemoReadFile ReadFile(DemoFile file)
    {
        var profile = Profiles.Single(entry => entry.Kind == file.Kind && entry.Result.Profile!.Files.Matches(file.Name)).Result.Profile!;
        var sink = new Sink();
        using var stream = new MemoryStream(file.Bytes.ToArray());
        var outcome = FileReader.Read(profile, stream, file.Name, sink, ReadLimits.Default, CancellationToken.None);
        return new DemoReadFile(file, outcome, sink.Readings);
    }

    private sealed class Sink : IReadingSink
    {
        public List<ParsedReading> Readings { get; } = [];

        public void Take(in ParsedReading reading) => Readings.Add(reading.Kept());
    }
}
