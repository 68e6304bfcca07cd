using System.Security.Cryptography;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Quality.Results;
using LabPipeline.Science.Colour;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Benchmarks;

/// <summary>The inner loops, one by one: reading a file, its hash, a sample's evaluation, a season's analysis, a colour difference.</summary>
[MemoryDiagnoser]
public class MicroBenchmarks : IReadingSink
{
    private const int Rows = 10_000;

    private readonly Profile _profile = ProfileDocument.Parse(SugarFile.Profile, "bench").Profile!;
    private readonly Cielab _reference = new(62.4, 3.1, 24.8, ViewingCondition.Of(Illuminant.D65, Observer.TenDegree));
    private readonly Cielab _sample = new(55.0, 6.2, 28.3, ViewingCondition.Of(Illuminant.D65, Observer.TenDegree));
    private readonly Func<double> _season = AnalysisTiming.OnceForBenchmark;
    private readonly SampleReadings _readings = new(Readings(), new Dictionary<int, Quality.Results.MethodFacts>());
    private readonly TrialSettings _trial = new()
    {
        TrialCode = "NT26",
        TimeZone = "Etc/UTC",
        ExtractsPerSample = 2,
        DryMatterRelation = "dry_matter_von_scheele_1937",
        DarkBelowHunterL = 55m,
        SevereFromScore = 3,
    };

    private byte[] _file = [];

    /// <summary>In this process: BenchmarkDotNet would build a project of its own otherwise, and builds here are shared.</summary>
    public static int Run(string[] args)
    {
        var reports = Path.Combine(Path.GetTempPath(), "labpipeline-micro");
        var config = DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance)).WithArtifactsPath(reports);
        BenchmarkSwitcher.FromTypes([typeof(MicroBenchmarks)]).Run(args.Length > 0 ? ["--filter", $"*{args[0]}*"] : ["--filter", "*"], config);
        return 0;
    }

    [GlobalSetup]
    public void WriteFile()
    {
        var path = Path.GetTempFileName();
        SugarFile.Write(path, Rows, round: 1);
        _file = File.ReadAllBytes(path);
        File.Delete(path);
    }

    [Benchmark]
    public long ParseTenThousandRows() => FileReader.Read(_profile, new MemoryStream(_file), "bench.csv", this, ReadLimits.Default, CancellationToken.None).Rows;

    [Benchmark]
    public byte[] HashTenThousandRows() => SHA256.HashData(_file);

    [Benchmark]
    public SampleComputation EvaluateSample() => SampleResults.Compute(_readings, _trial, new RepeatabilityTable([]));

    [Benchmark]
    public double AnalyseSeason() => _season();

    [Benchmark]
    public double ColourDifferenceOf2000() => ColourDifference.DeltaE00(_reference, _sample);

    [Benchmark]
    public double ColourDifferenceOf1976() => ColourDifference.DeltaEab(_reference, _sample);

    public void Take(in ParsedReading reading)
    {
        // What is timed ends here.
    }

    /// <summary>Two extracts of one sample with mass, volume and glucose.</summary>
    private static IEnumerable<SampleReading> Readings()
    {
        var id = 0;
        foreach (var (extract, glucose) in new[] { ("1", 0.050m), ("2", 0.052m) })
        {
            foreach (var (quantity, value) in new[]
            {
                (QuantityCatalogue.ExtractFreshMass, 50m), (QuantityCatalogue.ExtractVolume, 250m), (QuantityCatalogue.DilutionFactor, 1m), (QuantityCatalogue.GlucoseInExtract, glucose),
            })
            {
                yield return new SampleReading
                {
                    ReadingId = ++id,
                    Barcode = "26K70012C",
                    QuantityId = quantity.Id,
                    Value = value,
                    Extract = extract,
                    Instrument = "SUG-1",
                    Run = "r1",
                    RowKey = extract,
                };
            }
        }
    }
}
