using System.Diagnostics;
using System.Globalization;
using CsvHelper;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;

namespace LabPipeline.Benchmarks;

/// <summary>Reading a file to typed values, nothing stored: our strict grammar against CsvHelper and Python, in processes of their own kind.</summary>
internal static class ParseComparison
{
    private const string OursName = "ours, typed and checked";
    private const string HelperName = "CsvHelper, typed";
    private const string PlainName = "Python csv, texts only";
    private const string TypedName = "Python csv, typed";

    public static async Task<IReadOnlyList<Goal>> RunAsync(string[] args)
    {
        var (rows, rounds) = (Figures.Number(args, 0, 1_000_000), Figures.Number(args, 1, 5));
        var folder = Directory.CreateTempSubdirectory("labpipeline-parse-").FullName;
        var times = new Rounds();
        try
        {
            var file = Path.Combine(folder, "bulk.csv");
            SugarFile.Write(file, rows, round: 1);
            for (var round = 0; round <= rounds; round++)
            {
                Add(times, OursName, Time(() => Ours(file, rows)), round);
                Add(times, HelperName, Time(() => Helper(file)), round);
                Add(times, PlainName, await OtherSide.PythonPlainParseAsync(file), round);
                Add(times, TypedName, await OtherSide.PythonTypedParseAsync(file), round);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        Figures.Print($"parsing {rows:N0} rows x 8 columns, medians of {rounds} interleaved rounds after one to warm up");
        times.PrintTable(OursName, rows, "rows");
        return
        [
            new("typed strict parse against CsvHelper, typed", times.Median(HelperName) / times.Median(OursName), 1),
            new("typed strict parse against Python csv that only divides texts", times.Median(PlainName) / times.Median(OursName), 1.5),
            new("typed strict parse against Python csv with the same types", times.Median(TypedName) / times.Median(OursName), 1.5),
        ];
    }

    private static void Ours(string file, int rows)
    {
        using var bytes = File.OpenRead(file);
        var outcome = FileReader.Read(
            ProfileDocument.Parse(SugarFile.Profile, "bench").Profile!, bytes, "bulk.csv", new Nowhere(), ReadLimits.Default, CancellationToken.None);
        if (outcome.Rows != rows)
        {
            throw new InvalidOperationException($"{outcome.Rows} rows were read instead of {rows}.");
        }
    }

    private static void Helper(string file)
    {
        using var reader = new CsvReader(new StreamReader(file), CultureInfo.InvariantCulture);
        reader.Read();
        reader.ReadHeader();
        while (reader.Read())
        {
            _ = (reader.GetField(0), reader.GetField(1), reader.GetField<int>(2), reader.GetField(3), reader.GetField<int>(4), reader.GetField<decimal>(5), reader.GetField(6), reader.GetField<DateTime>(7));
        }
    }

    private static double Time(Action read)
    {
        var watch = Stopwatch.StartNew();
        read();
        return watch.Elapsed.TotalSeconds;
    }

    private static void Add(Rounds times, string side, double seconds, int round)
    {
        if (round > 0)
        {
            times.Add(side, seconds);
        }
    }

    private sealed class Nowhere : IReadingSink
    {
        public void Take(in ParsedReading reading)
        {
            // What is timed ends here.
        }
    }
}
