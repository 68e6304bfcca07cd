using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Folders;

/// <summary>Keeps the warehouse's list of held files like the folder, writing only what changed.</summary>
public sealed class HeldBook(LabWarehouse warehouse, string folderKind)
{
    private const int NamesAtOnce = 500;

    private Dictionary<string, string>? _known;

    public async Task UpdateAsync(IReadOnlyList<HeldEntry> held, DateTimeOffset now, CancellationToken cancellationToken)
    {
        _known ??= await warehouse.ReadAsync(LoadAsync, cancellationToken).ConfigureAwait(false);
        var reasons = held.ToDictionary(entry => entry.File.Name, entry => entry.Reason, StringComparer.Ordinal);
        var changed = held.Where(entry => !_known.TryGetValue(entry.File.Name, out var reason) || reason != entry.Reason).ToList();
        var gone = _known.Keys.Where(name => !reasons.ContainsKey(name)).ToList();
        if (changed.Count == 0 && gone.Count == 0)
        {
            return;
        }

        await warehouse.WriteAsync(
            async session =>
            {
                foreach (var entry in changed)
                {
                    await HeldFileStore.PutAsync(session, RowOf(entry, now)).ConfigureAwait(false);
                }

                foreach (var names in gone.Chunk(NamesAtOnce))
                {
                    await HeldFileStore.RemoveAsync(session, folderKind, names).ConfigureAwait(false);
                }
            },
            cancellationToken).ConfigureAwait(false);
        _known = reasons;
    }

    private async Task<Dictionary<string, string>> LoadAsync(WarehouseSession session) =>
        (await HeldFileStore.ListAsync(session).ConfigureAwait(false))
        .Where(row => row.Folder == folderKind)
        .ToDictionary(row => row.Name, row => row.Reason, StringComparer.Ordinal);

    private HeldFile RowOf(HeldEntry entry, DateTimeOffset now) => new()
    {
        Folder = folderKind,
        Name = entry.File.Name,
        Bytes = entry.File.Bytes,
        ReasonCode = entry.ReasonCode,
        Reason = entry.Reason,
        FirstSeenAt = now,
        LastSeenAt = now,
    };
}
