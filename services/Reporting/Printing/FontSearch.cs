namespace LabPipeline.Reporting.Printing;

/// <summary>Finds a plain and a bold font with wide coverage on this computer, or in a folder that was named.</summary>
internal static class FontSearch
{
    private static readonly (string Regular, string Bold)[] Known =
    [
        ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"),
        ("LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"),
        ("NotoSans-Regular.ttf", "NotoSans-Bold.ttf"),
        ("arial.ttf", "arialbd.ttf"),
        ("Arial.ttf", "Arial Bold.ttf"),
        ("segoeui.ttf", "segoeuib.ttf"),
    ];

    /// <summary>Font folders of Windows, of the XDG base directory specification, and of macOS.</summary>
    public static IReadOnlyList<string> UsualFolders()
    {
        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        var shared = Environment.GetEnvironmentVariable("XDG_DATA_DIRS") is { Length: > 0 } folders ? folders : "/usr/local/share:/usr/share";
        return
        [
            Environment.GetFolderPath(Environment.SpecialFolder.Fonts),
            Path.Combine(home, ".local", "share", "fonts"),
            .. OperatingSystem.IsWindows() ? [] : shared.Split(':', StringSplitOptions.RemoveEmptyEntries).Select(folder => Path.Combine(folder, "fonts")),
            .. OperatingSystem.IsMacOS() ? ["/Library/Fonts", "/System/Library/Fonts"] : Array.Empty<string>(),
        ];
    }

    /// <exception cref="PrintException">None of the known fonts is there.</exception>
    public static FontPair Find(IReadOnlyList<string> folders)
    {
        var files = folders.Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*.ttf", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true }))
            .GroupBy(path => Path.GetFileName(path), StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.First(), StringComparer.Ordinal);
        foreach (var (regular, bold) in Known)
        {
            if (files.TryGetValue(regular, out var regularPath) && files.TryGetValue(bold, out var boldPath))
            {
                return new FontPair(regularPath, boldPath);
            }
        }

        throw new PrintException(
            $"Found no font in {string.Join(", ", folders.Where(folder => folder.Length > 0))}; expected DejaVu Sans, Liberation Sans, Noto Sans, Arial or Segoe UI with its bold face. "
            + "Install one (on Debian the package fonts-dejavu-core), or name a folder that holds one with --fonts.");
    }
}
