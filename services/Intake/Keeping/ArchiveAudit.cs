using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Keeping;

/// <summary>Holds the warehouse against the archive: the database is sound, every byte is there, and every stored fact is what its line says.</summary>
public sealed class ArchiveAudit(LabWarehouse warehouse, string archiveFolder)
{
    private const int FilesAtOnce = 100;
    private const int MostFaults = 100;

    private readonly FileArchive _archive = new(archiveFolder);
    private readonly ArchiveJournal _journal = new(archiveFolder);
    private readonly Dictionary<string, Profile> _profiles = new(StringComparer.Ordinal);

    public async Task<AuditReport> RunAsync(CancellationToken cancellationToken)
    {
        var faults = new List<string>(await warehouse.CheckAsync(cancellationToken).ConfigureAwait(false));
        var (files, compared) = (0, 0);
        try
        {
            var entries = _journal.Read().ToLookup(entry => entry.Sha256);
            for (IReadOnlyList<SourceFile> some = [null!]; some.Count > 0 && faults.Count < MostFaults;)
            {
                var after = files == 0 ? 0 : some[^1].FileId;
                some = await warehouse.ReadAsync(session => FileLedgerStore.ListAsync(session, after, FilesAtOnce), cancellationToken).ConfigureAwait(false);
                foreach (var file in some)
                {
                    files++;
                    compared += await LookAsync(file, [.. entries[file.Sha256]], faults, cancellationToken).ConfigureAwait(false) ? 1 : 0;
                }
            }
        }
        catch (DbException exception)
        {
            faults.Add($"The warehouse cannot be read ({exception.Message}); rebuild it with 'station rebuild'.");
        }

        return new AuditReport(files, compared, faults);
    }

    /// <returns>Whether its facts could be compared.</returns>
    private async Task<bool> LookAsync(SourceFile file, IReadOnlyList<JournalEntry> entries, List<string> faults, CancellationToken cancellationToken)
    {
        try
        {
            if (!HasItsBytes(file))
            {
                faults.Add($"{file.Name}: the archived copy {file.ArchivedAs} has changed; put the copy of a backup, or the original from 'taken', in its place.");
                return false;
            }

            if (file.State == FileState.Refused || ProfileOf(file, entries) is not { } profile)
            {
                return false;
            }

            return await warehouse.ReadAsync(session => Task.FromResult(Compare(session, file, profile, faults, cancellationToken)), cancellationToken).ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            faults.Add($"{file.Name}: {exception.Message}");
            return false;
        }
    }

    private bool HasItsBytes(SourceFile file)
    {
        using var bytes = _archive.Open(file.ArchivedAs);
        return Convert.ToHexStringLower(SHA256.HashData(bytes)) == file.Sha256;
    }

    private Profile? ProfileOf(SourceFile file, IReadOnlyList<JournalEntry> entries)
    {
        // A refused file may have come again under a corrected profile; the ledger names the one that counts.
        foreach (var entry in entries.Reverse())
        {
            if (!_profiles.TryGetValue(entry.Profile, out var profile))
            {
                _profiles.Add(entry.Profile, profile = _journal.ProfileOf(entry.Profile));
            }

            if (profile.Name == file.Profile && profile.Version == file.ProfileVersion)
            {
                return profile;
            }
        }

        return null;
    }

    private bool Compare(WarehouseSession session, SourceFile file, Profile profile, List<string> faults, CancellationToken cancellationToken)
    {
        // One connection can stream one list at a time; controls and fry batches are few.
        using var comparison = new FactComparison(subject => subject == FactSubject.Sample
            ? KeptFactStore.List(session, file, subject)
            : KeptFactStore.List(session, file, subject).ToList());
        using (var bytes = _archive.Open(file.ArchivedAs))
        {
            FileReader.Read(profile, bytes, file.Name, comparison, ReadLimits.Default, cancellationToken);
        }

        comparison.Complete();
        if (comparison.Wrong is { } wrong)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"{file.Name}: stored {wrong.Value} from line {wrong.Line} ('{wrong.RawValue}'), which the archived file does not say; rebuild the warehouse with 'station rebuild'."));
        }
        else if (comparison.Matched != file.NewCount + file.ConflictingCount)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"{file.Name}: {comparison.Matched} facts are stored, {file.NewCount + file.ConflictingCount} were; rebuild the warehouse with 'station rebuild'."));
        }

        return true;
    }
}
