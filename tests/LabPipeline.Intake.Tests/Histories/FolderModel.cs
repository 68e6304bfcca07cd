using System.Globalization;
using LabPipeline.Intake.Tests.Storing;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>What intake must make of a history, in the plainest words: a folder, a set of contents, a list of values by key.</summary>
internal sealed class FolderModel
{
    public const int QuietSeconds = 5;

    private readonly Dictionary<string, Entry> _folder = [];
    private readonly Dictionary<string, string> _exports = [];
    private readonly Dictionary<string, (int Version, int Since)> _seen = [];
    private readonly Dictionary<string, bool> _contents = [];
    private readonly List<(string Key, string Value, int Standing)> _values = [];
    private readonly HashSet<(string Name, int Version)> _notPutAway = [];
    private int _now;
    private int _versions;

    public IEnumerable<string> Names => _folder.Keys.Order(StringComparer.Ordinal);

    /// <summary>Contents taken, and whether they were accepted.</summary>
    public IEnumerable<string> Contents => _contents.Select(content => $"{(content.Value ? "accepted" : "refused")} {content.Key}").Order(StringComparer.Ordinal);

    public IEnumerable<string> Values => _values.Select(value => string.Create(CultureInfo.InvariantCulture, $"{value.Key}={value.Value} ({value.Standing})")).Order(StringComparer.Ordinal);

    public string? TextOf(string name) => _folder.GetValueOrDefault(name)?.Text;

    /// <summary>What the instrument wrote last under a name, wherever that file is now.</summary>
    public string? LastExportOf(string name) => _exports.GetValueOrDefault(name);

    /// <summary>The instrument writes, not a person who copies or shortens a file.</summary>
    /// <returns>As <see cref="Write"/>.</returns>
    public int Export(string name, string text)
    {
        _exports[name] = text;
        return Write(name, text);
    }

    /// <returns>Number of the version written, which the test also makes the time of change of the real file.</returns>
    public int Write(string name, string text)
    {
        _folder[name] = new Entry(text, ++_versions);
        return _versions;
    }

    public void Rename(string name, string other)
    {
        _folder.Remove(name, out var entry);
        _folder[other] = entry!;
    }

    public void Remove(string name) => _folder.Remove(name);

    public void Wait(int seconds) => _now += seconds;

    public void Restart() => _seen.Clear();

    public void Look(bool putAway)
    {
        foreach (var gone in _seen.Keys.Where(name => !_folder.ContainsKey(name)).ToList())
        {
            _seen.Remove(gone);
        }

        foreach (var (name, entry) in _folder.OrderBy(entry => entry.Key, StringComparer.Ordinal).ToList())
        {
            if (!_seen.TryGetValue(name, out var seen) || seen.Version != entry.Version)
            {
                _seen[name] = seen = (entry.Version, _now);
            }

            if (entry.Text.EndsWith('\n') && _now - seen.Since >= QuietSeconds)
            {
                Take(name, entry, putAway);
            }
        }
    }

    private void Take(string name, Entry entry, bool putAway)
    {
        if (!_notPutAway.Remove((name, entry.Version)) && !_contents.GetValueOrDefault(entry.Text))
        {
            _contents[entry.Text] = Read(entry.Text);
        }

        if (putAway)
        {
            _folder.Remove(name);
        }
        else
        {
            _notPutAway.Add((name, entry.Version));
        }
    }

    /// <returns>Whether every row is good; otherwise nothing of the file counts.</returns>
    private bool Read(string text)
    {
        if (!text.StartsWith(SugarProfile.Header, StringComparison.Ordinal))
        {
            return false;
        }

        var rows = text[SugarProfile.Header.Length..].Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(',')).ToList();
        if (rows.Count == 0 || rows.Exists(cells => cells.Length != 5 || cells[4] is not ("0.1" or "0.2" or "0.3")))
        {
            return false;
        }

        foreach (var cells in rows)
        {
            Count(cells[2], cells[4]);
        }

        return true;
    }

    private void Count(string key, string value)
    {
        var isFirst = !_values.Exists(known => known.Key == key);
        if (isFirst || !_values.Exists(known => known.Key == key && known.Value == value))
        {
            _values.Add((key, value, isFirst ? 0 : 1));
        }
    }

    private sealed record Entry(string Text, int Version);
}
