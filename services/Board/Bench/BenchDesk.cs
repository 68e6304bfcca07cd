using System.Text;
using LabPipeline.Board.Arrivals;
using LabPipeline.Hosting;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Bench;

/// <summary>Takes bench sheets from the board the way all files come: as a file in the drop folder, so that ledger, archive and rules apply.</summary>
public sealed class BenchDesk(LabWarehouse warehouse, ProfileDesk profiles, IOptions<LabOptions> lab, TimeProvider time) : IDisposable
{
    private const string Kind = "bench";

    // A name with this ending is not looked at by intake until the whole file is there.
    private const string Unfinished = ".part";

    private readonly SemaphoreSlim _oneAtATime = new(1, 1);

    /// <summary>Takes an entry once, however often it is sent.</summary>
    public async Task<BenchReceipt> TakeAsync(BenchEntry entry, CancellationToken cancellationToken)
    {
        if (BenchSheet.Find(entry.Sheet) is not { } sheet || entry.Rows.Count is 0 or > BenchSheet.MostRows)
        {
            return BenchReceipt.Refused($"Found a sheet '{entry.Sheet}' of {entry.Rows.Count} rows; expected peel, fry or chips with 1 to {BenchSheet.MostRows}.");
        }

        await _oneAtATime.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            return await warehouse.ReadAsync(session => BenchEntryStore.FindAsync(session, entry.Id), cancellationToken).ConfigureAwait(false) is { } file
                ? BenchReceipt.Taken(file)
                : await TakeNewAsync(sheet, entry, cancellationToken).ConfigureAwait(false);
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    public void Dispose() => _oneAtATime.Dispose();

    private async Task<BenchReceipt> TakeNewAsync(BenchSheet sheet, BenchEntry entry, CancellationToken cancellationToken)
    {
        var name = sheet.FileNameOf(entry);
        var choice = profiles.Choose(Kind, name);
        if (choice.Profile is not { } profile)
        {
            return BenchReceipt.Refused(choice.Reason);
        }

        var (text, faults) = sheet.Write(entry, profile.Time);
        if (faults.Count == 0)
        {
            faults = TryOut(profile, text, name, cancellationToken);
        }

        if (faults.Count > 0)
        {
            return BenchReceipt.Refused(faults);
        }

        Drop(name, text);
        await warehouse.WriteAsync(session => RememberAsync(session, entry, name), cancellationToken).ConfigureAwait(false);
        return BenchReceipt.Taken(name);
    }

    private async Task RememberAsync(WarehouseSession session, BenchEntry entry, string name)
    {
        var now = time.GetUtcNow();
        await BenchEntryStore.AddAsync(session, entry, name, now).ConfigureAwait(false);
        var change = new Change { At = now, Who = entry.By, What = "bench sheet entered", Subject = "sheet:" + name, Why = $"{entry.Sheet}, {entry.Rows.Count} rows" };
        await ChangeLogStore.AddAsync(session, change).ConfigureAwait(false);
    }

    /// <summary>Reads the text as intake will, while the person who wrote it can still mend it.</summary>
    private static List<string> TryOut(Profile profile, string text, string name, CancellationToken cancellationToken)
    {
        using var bytes = new MemoryStream(Encoding.UTF8.GetBytes(text));
        var outcome = ProfileDesk.Read(profile, bytes, name, cancellationToken).Outcome;
        var parked = outcome.ParkedRows.Select(row => row.Fault.Describe(name));
        return outcome.State == ReadState.Complete ? [.. parked] : [.. outcome.Faults.Select(fault => fault.Describe(name))];
    }

    private void Drop(string name, string text)
    {
        var folder = Path.Combine(lab.Value.DropFolder, Kind);
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, name);
        using (var file = new FileStream(path + Unfinished, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            file.Write(Encoding.UTF8.GetBytes(text));
            file.Flush(flushToDisk: true);
        }

        File.Move(path + Unfinished, path, overwrite: true);
    }
}
