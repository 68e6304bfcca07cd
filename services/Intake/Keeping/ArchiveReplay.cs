using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;
using LabPipeline.Warehouse;

namespace LabPipeline.Intake.Keeping;

/// <summary>Makes a warehouse whole from the archive: an empty one, or one restored from an older backup.</summary>
public sealed class ArchiveReplay(LabWarehouse warehouse, string archiveFolder, TimeProvider time)
{
    private const int ArrivalsAtOnce = 50;

    /// <summary>Stores every arrival the warehouse does not know; the services then judge them as if they had just come.</summary>
    /// <returns>How many were missing, of how many the archive remembers.</returns>
    public async Task<(int Missing, int Remembered)> RunAsync(CancellationToken cancellationToken)
    {
        var journal = new ArchiveJournal(archiveFolder);
        var intake = new FileIntake(warehouse, new FileArchive(archiveFolder), time);
        var profiles = new Dictionary<string, Profile>(StringComparer.Ordinal);
        var entries = journal.Read();
        var missing = 0;
        foreach (var some in entries.Chunk(ArrivalsAtOnce))
        {
            foreach (var sha256 in some.Select(entry => entry.Profile).Where(sha256 => !profiles.ContainsKey(sha256)).Distinct().ToList())
            {
                profiles.Add(sha256, journal.ProfileOf(sha256));
            }

            missing += await intake.RestoreAsync([.. some.Select(entry => (entry, profiles[entry.Profile]))], cancellationToken).ConfigureAwait(false);
        }

        return (missing, entries.Count);
    }
}
