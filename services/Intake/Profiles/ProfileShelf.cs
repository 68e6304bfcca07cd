namespace LabPipeline.Intake.Profiles;

/// <summary>The profiles of one kind of instrument as they lie in its profile folder; a changed document is read again.</summary>
public sealed class ProfileShelf(string folder)
{
    private readonly Dictionary<string, (DateTime ModifiedAt, ProfileResult Result)> _read = new(StringComparer.Ordinal);

    /// <summary>Looks at the folder and reads what is new or changed.</summary>
    public void Refresh()
    {
        Directory.CreateDirectory(folder);
        var present = Directory.EnumerateFiles(folder, "*.json").ToHashSet(StringComparer.Ordinal);
        foreach (var gone in _read.Keys.Where(path => !present.Contains(path)).ToList())
        {
            _read.Remove(gone);
        }

        foreach (var path in present)
        {
            var modifiedAt = File.GetLastWriteTimeUtc(path);
            if (!_read.TryGetValue(path, out var known) || known.ModifiedAt != modifiedAt)
            {
                _read[path] = (modifiedAt, ProfileDocument.Parse(File.ReadAllText(path), Path.GetFileName(path)));
            }
        }
    }

    /// <summary>The one profile for <paramref name="fileName"/>, or why there is none.</summary>
    public ProfileChoice Choose(string fileName)
    {
        var fitting = _read.Values.Select(entry => entry.Result.Profile).OfType<Profile>().Where(profile => profile.Files.Matches(fileName)).ToList();
        if (fitting.Count == 1)
        {
            return new ProfileChoice(fitting[0], "", "");
        }

        if (fitting.Count > 1)
        {
            var names = string.Join(", ", fitting.Select(profile => profile.Name).Order(StringComparer.Ordinal));
            return new ProfileChoice(
                null, "file.several-profiles", $"{fileName}: {fitting.Count} profiles claim this name ({names}); make their file patterns distinct.");
        }

        var broken = _read.Where(entry => !entry.Value.Result.IsValid).Select(entry => Path.GetFileName(entry.Key)).Order(StringComparer.Ordinal).ToList();
        var hint = broken.Count == 0 ? "" : $" Not usable as they are: {string.Join(", ", broken)}; 'station dry-run' lists their faults.";
        return new ProfileChoice(null, "file.no-profile", $"{fileName}: no profile claims a file of this name; add one, or move the file to the right folder.{hint}");
    }
}
