using System.Diagnostics;
using System.Globalization;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Benchmarks;

/// <summary>What one more small file and one sample's trail cost, by how many readings the warehouse holds; the sizes take turns.</summary>
internal sealed class GrowthTiming : IDisposable
{
    private const int RowsPerFile = 50;
    private const int RowsPerSample = 40;
    private const int Rounds = 60;
    private const int WarmingRounds = 20;

    private static readonly int[] Sizes = [1_000, 10_000, 1_000_000, 10_000_000];

    private readonly string _folder;
    private readonly int _readings;
    private readonly LabWarehouse _warehouse;
    private readonly FileIntake _intake;
    private readonly Profile _profile = ProfileDocument.Parse(SugarFile.Profile, "bench").Profile!;
    private readonly List<double> _files = [];
    private readonly List<double> _trails = [];

    private GrowthTiming(string folder, int readings)
    {
        (_folder, _readings) = (Directory.CreateDirectory(folder).FullName, readings);
        _warehouse = new LabWarehouse(new SqliteDialect(Path.Combine(folder, "warehouse.db")), TimeProvider.System);
        _intake = new FileIntake(_warehouse, new FileArchive(Path.Combine(folder, "archive")), TimeProvider.System);
    }

    public static async Task<IReadOnlyList<Goal>> RunAsync(string[] args)
    {
        var root = Directory.CreateTempSubdirectory("labpipeline-growth-").FullName;
        try
        {
            var labs = Sizes.Where(size => size <= Figures.Number(args, 0, Sizes[^1])).Select(size => new GrowthTiming(Path.Combine(root, size.ToString(CultureInfo.InvariantCulture)), size)).ToList();
            foreach (var lab in labs)
            {
                await lab.FillAsync();
            }

            for (var round = 0; round < WarmingRounds + Rounds; round++)
            {
                foreach (var lab in labs)
                {
                    await lab.MeasureAsync(round);
                }
            }

            labs.ForEach(lab => lab.Print());
            var ratio = Figures.Median(labs[^1]._files) / Figures.Median(labs[0]._files);
            labs.ForEach(lab => lab.Dispose());
            return [new(string.Create(CultureInfo.InvariantCulture, $"one more file at {labs[^1]._readings:N0} against {labs[0]._readings:N0} readings"), ratio, 1.3, AtMost: true)];
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(root, recursive: true);
        }
    }

    public void Dispose() => _warehouse.Dispose();

    /// <summary>Readings of earlier files, 40 a sample.</summary>
    private async Task FillAsync()
    {
        await new Migrator(_warehouse, TimeProvider.System).MigrateAsync(CancellationToken.None);
        await _warehouse.WriteAsync(
            async session =>
            {
                using var loader = _warehouse.Dialect.CreateFactLoader(session);
                loader.Begin(1);
                for (var row = 0; row < _readings; row++)
                {
                    loader.Add(ReadingOf(row));
                }

                await loader.CompleteAsync();
            },
            CancellationToken.None);
    }

    private async Task MeasureAsync(int round)
    {
        var path = Path.Combine(_folder, $"{round}.csv");
        SugarFile.Write(path, RowsPerFile, 1000 + round, Sizes[^1] + round);
        var folder = new DropFolder("sugar", _folder);
        var ready = FolderScan.List(folder).Where(file => file.Path == path).Select(file => new ReadyFile(file, _profile)).ToList();
        var watch = Stopwatch.StartNew();
        var result = await _intake.TakeAsync(folder, [ready], _ => Task.CompletedTask, CancellationToken.None).SingleAsync();
        var taken = watch.Elapsed.TotalMilliseconds;

        if (result.Taken is not [{ RefusedBecause: null }])
        {
            throw new InvalidOperationException("The file was not stored.");
        }

        // Another sample each time, spread over all that was stored.
        var barcode = SugarFile.BarcodeOf((int)((long)round * 7919 % Math.Max(1, _readings / RowsPerSample)));
        watch.Restart();
        await _warehouse.ReadAsync(session => TrailStore.ListReadingsAsync(session, barcode), CancellationToken.None);
        if (round >= WarmingRounds)
        {
            _files.Add(taken);
            _trails.Add(watch.Elapsed.TotalMilliseconds);
        }
    }

    private void Print() => Figures.Print($"{_readings,12:N0} readings: one more file of {RowsPerFile} rows {Figures.Median(_files):0.0} ms, a sample's trail {Figures.Median(_trails):0.00} ms; medians of {Rounds}");

    private static NewFact ReadingOf(int row) => new(
        FactSubject.Sample, row + 2, "SUG-1", "R0", row.ToString(CultureInfo.InvariantCulture), QuantityCatalogue.GlucoseInExtract.Id,
        SugarFile.BarcodeOf(row / RowsPerSample), null, 0.05m, false, "0.05000", "g/L", row % 2 == 0 ? "A" : "B", (row / 2 % 2) + 1, null, null, "T1",
        new DateTimeOffset(2026, 1, 14, 8, 0, 0, TimeSpan.Zero), "2026-01-14 08:00:00");
}
