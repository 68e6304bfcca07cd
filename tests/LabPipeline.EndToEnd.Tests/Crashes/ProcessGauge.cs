using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;

namespace LabPipeline.EndToEnd.Tests.Crashes;

/// <summary>What a running station takes of the machine, noted over its life.</summary>
internal sealed class ProcessGauge(string dataFolder)
{
    private readonly List<(double Megabytes, int Handles, double JournalMegabytes, double OutboxSeconds)> _readings = [];

    public int Count => _readings.Count;

    public double MostMegabytes => _readings.Max(reading => reading.Megabytes);

    public int MostHandles => _readings.Max(reading => reading.Handles);

    public double MostJournalMegabytes => _readings.Max(reading => reading.JournalMegabytes);

    public double MostOutboxSeconds => _readings.Max(reading => reading.OutboxSeconds);

    /// <summary>Notes resident memory, open handles, the length of the database's journal, and how long the oldest message in the outbox has waited.</summary>
    public void Note(ProductProcess process)
    {
        var folder = string.Create(CultureInfo.InvariantCulture, $"/proc/{process.Id}");
        var resident = File.ReadLines(Path.Combine(folder, "status")).Single(line => line.StartsWith("VmRSS:", StringComparison.Ordinal));
        var kilobytes = double.Parse(resident.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);
        var journal = new FileInfo(Path.Combine(dataFolder, "warehouse.db-wal"));
        _readings.Add((kilobytes / 1024, Directory.GetFiles(Path.Combine(folder, "fd")).Length, journal.Exists ? journal.Length / 1048576.0 : 0, OutboxSeconds()));
    }

    private double OutboxSeconds()
    {
        using var warehouse = new SqliteConnection($"Data Source={Path.Combine(dataFolder, "warehouse.db")};Mode=ReadOnly;Pooling=false");
        var oldest = warehouse.ExecuteScalar<string?>("select min(created_at) from outbox where published_at is null");
        return oldest is null ? 0 : (DateTimeOffset.UtcNow - DateTimeOffset.Parse(oldest, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal)).TotalSeconds;
    }

    /// <summary>Middle value of the memory noted in one part of the time, both ends from 0 to 1.</summary>
    public double MedianMegabytes(double from, double to)
    {
        var part = _readings[(int)(from * Count)..(int)(to * Count)].Select(reading => reading.Megabytes).Order().ToList();
        return part[part.Count / 2];
    }
}
