namespace LabPipeline.Intake.Folders;

/// <summary>Remembers since when each file of a folder has been quiet; forgets those that left.</summary>
public sealed class FolderMemory(TimeProvider time)
{
    private readonly Dictionary<string, Entry> _entries = new(StringComparer.Ordinal);

    public Observation Observe(SeenFile file)
    {
        var now = time.GetTimestamp();
        if (!_entries.TryGetValue(file.Name, out var entry) || entry.Bytes != file.Bytes || entry.ModifiedAt != file.ModifiedAt)
        {
            entry = new Entry(file.Bytes, file.ModifiedAt, now);
            _entries[file.Name] = entry;
        }

        return new Observation(entry.Bytes, entry.ModifiedAt, time.GetElapsedTime(entry.Since, now));
    }

    public void ForgetAllBut(IReadOnlyCollection<SeenFile> present)
    {
        if (_entries.Count > present.Count)
        {
            var names = present.Select(file => file.Name).ToHashSet(StringComparer.Ordinal);
            foreach (var name in _entries.Keys.Where(name => !names.Contains(name)).ToList())
            {
                _entries.Remove(name);
            }
        }
    }

    private readonly record struct Entry(long Bytes, DateTimeOffset ModifiedAt, long Since);
}
