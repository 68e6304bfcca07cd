using System.Diagnostics;
using System.Globalization;
using CsvHelper;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;

namespace LabPipeline.Benchmarks;

/// <summary>Reading a file to typed values, nothing stored: our strict grammar against CsvHelper and Python, in processes of their own kind.</summary>
internal static class ParseComparison
{
    public static async Task<int> RunAsync(string[] args)
    {
        var (rows, rounds) = (Figures.Number(args, 0, 1_000_000), Figures.Number(args, 1, 5));
        var folder = Directory.CreateTempSubdirectory("labpipeline-parse-").FullName;
        var times = new Dictionary<string, List<double>>();
        try
        {
            var file = Path.Combine(folder, "bulk.csv");
            SugarFile.Write(file, rows, round: 1);
            for (var round = 0; round <= rounds; round++)
            {
                Add(times, "ours, typed and checked", Time(() => Ours(file, rows)), round);
                Add(times, "CsvHelper, typed", Time(() => Helper(file)), round);
                Add(times, "Python csv, texts only", await OtherSide.PythonPlainParseAsync(file), round);
                Add(times, "Python csv, typed", await OtherSide.PythonTypedParseAsync(file), round);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        var ours = Figures.Median(times.First().Value);
        Figures.Print($"parsing {rows:N0} rows x 8 columns, medians of {rounds} interleaved rounds after one to warm up");
        foreach (var (name, values) in times)
        {
            Figures.Print($"{name,-24} {Figures.Median(values),6:0.00} s   ours is {Figures.Median(values) / ours:0.00} x as fast");
        }

        Figures.PrintLoad();
        return 0;
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

    private static void Add(Dictionary<string, List<double>> times, string name, double seconds, int round)
    {
        times.TryAdd(name, []);
        if (round > 0)
        {
            times[name].Add(seconds);
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
