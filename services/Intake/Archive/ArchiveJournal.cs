using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Archive;

/// <summary>What lies in the archive under which name, and the profile documents it was read with; one line an arrival, only ever added to.</summary>
/// <remarks>
/// Written before the warehouse hears of a file. After a crash an arrival can stand here twice, or half in a last line; a reader takes the last of the
/// two and leaves out what does not parse. Each drop folder has files of its own, since several processes may take files at once.
/// </remarks>
public sealed class ArchiveJournal(string folder, IArchiveDisk disk)
{
    private const string FolderName = "journal";
    private const string ProfileFolderName = "profiles";

    private readonly Dictionary<string, string> _kept = new(StringComparer.Ordinal);
    private readonly HashSet<string> _settled = new(StringComparer.Ordinal);

    public ArchiveJournal(string folder)
        : this(folder, new ArchiveDisk())
    {
    }

    /// <summary>Keeps the profile's document.</summary>
    /// <returns>Its hash.</returns>
    public string Keep(Profile profile)
    {
        if (_kept.TryGetValue(profile.Document, out var known))
        {
            return known;
        }

        var bytes = Encoding.UTF8.GetBytes(profile.Document);
        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        var shelf = Path.Combine(folder, ProfileFolderName);
        disk.CreateFolder(shelf);
        var draft = Path.Combine(shelf, Path.GetRandomFileName() + ".draft");
        using (var file = disk.Create(draft))
        {
            file.Write(bytes);
            disk.Flush(file);
        }

        disk.Move(draft, ProfilePath(sha256));
        disk.FlushFolder(shelf);
        disk.FlushFolder(folder);
        _kept.Add(profile.Document, sha256);
        return sha256;
    }

    /// <summary>Adds the arrivals of a batch and makes them durable with one flush.</summary>
    public void Add(string kind, IEnumerable<JournalEntry> entries, DateTimeOffset now)
    {
        var shelf = Path.Combine(folder, FolderName);
        var path = Path.Combine(shelf, string.Create(CultureInfo.InvariantCulture, $"{kind}-{now.UtcDateTime:yyyy-MM}.jsonl"));
        disk.CreateFolder(shelf);
        using (var file = disk.Append(path))
        {
            file.Write(Lines(entries));
            disk.Flush(file);
        }

        if (_settled.Add(path))
        {
            disk.FlushFolder(shelf);
            disk.FlushFolder(folder);
        }
    }

    /// <summary>Every arrival in its order, each once.</summary>
    public IReadOnlyList<JournalEntry> Read()
    {
        var entries = new Dictionary<(string, string, string, DateTimeOffset), JournalEntry>();
        foreach (var path in disk.List(Path.Combine(folder, FolderName)).Order(StringComparer.Ordinal))
        {
            using var reader = new StreamReader(disk.Open(path), Encoding.UTF8);
            while (reader.ReadLine() is { } line)
            {
                if (Parse(line) is { } entry)
                {
                    entries[(entry.Sha256, entry.Folder, entry.Name, entry.ModifiedAt)] = entry;
                }
            }
        }

        return [.. entries.Values.OrderBy(entry => entry.TakenAt).ThenBy(entry => entry.Folder, StringComparer.Ordinal).ThenBy(entry => entry.Name, StringComparer.Ordinal)];
    }

    /// <summary>The profile with this hash.</summary>
    /// <exception cref="InvalidDataException">It does not lie in the archive as it was kept.</exception>
    public Profile ProfileOf(string sha256)
    {
        using var reader = new StreamReader(disk.Open(ProfilePath(sha256)), Encoding.UTF8);
        var text = reader.ReadToEnd();
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))) == sha256
            ? ProfileDocument.Parse(text, sha256).Profile ?? throw new InvalidDataException($"The archived profile {sha256} is not one this program can read; use the program that kept it.")
            : throw new InvalidDataException($"The archived profile {sha256} has changed since it was kept; put the copy of a backup in its place.");
    }

    private static byte[] Lines(IEnumerable<JournalEntry> entries)
    {
        using var lines = new MemoryStream();
        foreach (var entry in entries)
        {
            // A line break first ends what a crash left of the line before.
            lines.WriteByte((byte)'\n');
            JsonSerializer.Serialize(lines, entry);
        }

        lines.WriteByte((byte)'\n');
        return lines.ToArray();
    }

    private static JournalEntry? Parse(string line)
    {
        try
        {
            return line.Length == 0 ? null : JsonSerializer.Deserialize<JournalEntry>(line);
        }
        catch (JsonException)
        {
            // The half of a line that a crash left; its arrival was not acknowledged and stands in a later line.
            return null;
        }
    }

    private string ProfilePath(string sha256) => Path.Combine(folder, ProfileFolderName, sha256 + ".json");
}
