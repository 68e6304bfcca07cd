using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace LabPipeline.Conventions.Tests;

/// <summary>Check values nobody reads check nothing: every file of the Reference folder is loaded by a test.</summary>
public sealed partial class ReferenceFilesTests
{
    // The NIST sets are loaded by the names this file of certified values lists.
    private const string NistPattern = "G_nist_strd/{set}.csv";
    private const string NistCertified = "G_nist_strd_certified.csv";

    private static readonly string Tests = FindTests();

    private static readonly string Reference = Path.Combine(Tests, "LabPipeline.Testing", "Reference");

    [Fact]
    public void ReferenceFiles_WhenListed_AreEachLoadedByATest()
    {
        var sources = Directory.EnumerateDirectories(Tests, "*.Tests")
            .SelectMany(project => Directory.EnumerateFiles(project, "*.cs", SearchOption.AllDirectories))
            .Where(path => path != ThisFile() && !path.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"))
            .Select(File.ReadAllText)
            .ToList();
        var names = Directory.EnumerateFiles(Reference, "*.csv", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Reference, path).Replace(Path.DirectorySeparatorChar, '/'))
            .ToList();

        Assert.NotEmpty(names);
        Assert.Empty(names.Where(name => !IsLoaded(name, sources)).Order(StringComparer.Ordinal));
    }

    /// <summary>Named whole, or by a pattern such as "B_cmf_{step}nm.csv" whose filled-in part a test names.</summary>
    private static bool IsLoaded(string name, List<string> sources)
    {
        if (sources.Any(source => source.Contains($"\"{name}\"", StringComparison.Ordinal)))
        {
            return true;
        }

        return sources.Any(source => LoadedPattern().Matches(source).Any(pattern =>
            FilledPart(pattern.Groups["name"].Value, name) is { } part && IsNamed(pattern.Groups["name"].Value, part, source, sources)));
    }

    private static bool IsNamed(string pattern, string part, string source, List<string> sources) => pattern == NistPattern
        ? File.ReadLines(Path.Combine(Reference, NistCertified)).Any(line => line.StartsWith(part + ",", StringComparison.Ordinal))
        : Regex.IsMatch(source, $@"InlineData\((.*,\s*)?""?{Regex.Escape(part)}""?[,)]") || sources.Any(other => other.Contains($"\"{part}\"", StringComparison.Ordinal));

    private static string? FilledPart(string pattern, string name)
    {
        var (before, after) = (pattern[..pattern.IndexOf('{', StringComparison.Ordinal)], pattern[(pattern.IndexOf('}', StringComparison.Ordinal) + 1)..]);
        return name.Length > before.Length + after.Length && name.StartsWith(before, StringComparison.Ordinal) && name.EndsWith(after, StringComparison.Ordinal)
            ? name[before.Length..^after.Length]
            : null;
    }

    [GeneratedRegex("""ReferenceTable\.Load\(\$"(?<name>[^"{]*\{\w+\}[^"{]*)"\)""")]
    private static partial Regex LoadedPattern();

    private static string ThisFile([CallerFilePath] string here = "") => here;

    private static string FindTests() => Directory.GetParent(ThisFile())!.Parent!.FullName;
}
