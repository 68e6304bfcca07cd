using System.Text;

namespace LabPipeline.Intake.Folders;

/// <summary>What file names mean and how they are written where we choose them. A name is data, never part of a path by itself.</summary>
public static class FileNames
{
    /// <summary>Ending of the file that says another one is complete: <c>run7.csv.done</c>.</summary>
    public const string DoneEnding = ".done";

    private const int LongestKept = 120;

    private static readonly string[] TemporaryEndings = [".tmp", ".part", ".partial", ".crdownload", DoneEnding];

    /// <summary>Hidden, temporary and office lock files: nobody dropped them for us.</summary>
    public static bool IsIgnored(string name) =>
        name.StartsWith('.')
        || name.StartsWith("~$", StringComparison.Ordinal)
        || TemporaryEndings.Any(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

    /// <summary>The name with everything but letters, digits, dot, dash and underscore replaced, fit for any file system.</summary>
    public static string Safe(string name)
    {
        var safe = new StringBuilder(Math.Min(name.Length, LongestKept));
        foreach (var rune in name.EnumerateRunes())
        {
            safe.Append(rune.IsAscii && (char.IsAsciiLetterOrDigit((char)rune.Value) || rune.Value is '.' or '-' or '_') ? (char)rune.Value : '_');
            if (safe.Length == LongestKept)
            {
                break;
            }
        }

        var text = safe.ToString().TrimEnd('.').TrimStart('.');
        return text.Length == 0 ? "unnamed" : text;
    }

    /// <summary>A name in <paramref name="folder"/> that is still free: the safe name, or with a number before its ending.</summary>
    public static string FreePath(string folder, string name)
    {
        var safe = Safe(name);
        var path = Path.Combine(folder, safe);
        for (var number = 2; Path.Exists(path); number++)
        {
            path = Path.Combine(folder, $"{Path.GetFileNameWithoutExtension(safe)}.{number}{Path.GetExtension(safe)}");
        }

        return path;
    }
}
