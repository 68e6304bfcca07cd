using System.Globalization;
using System.Text.RegularExpressions;

namespace LabPipeline.Conventions.Tests;

/// <summary>Which test shows which failure of docs/specs/reliability.md, as the attributes in the sources of all tests say.</summary>
internal static partial class ShownFailures
{
    private static readonly IReadOnlyList<string> Sources =
    [
        .. Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "tests"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"))
            .Select(path => File.ReadAllText(path).ReplaceLineEndings("\n")),
    ];

    /// <summary>Every test, with the failures it shows.</summary>
    public static IReadOnlyList<(string Test, IReadOnlyList<int> Failures)> Tests { get; } =
    [
        .. Sources.SelectMany(source => Declared().Matches(source))
            .Where(match => TestMark().IsMatch(match.Groups["lists"].Value))
            .Select(match => (match.Groups["name"].Value, FailuresOf(match.Groups["lists"].Value))),
    ];

    /// <summary>How many of the attributes there are, read or not.</summary>
    public static int Written => Sources.Sum(source => Mark().Count(source));

    private static IReadOnlyList<int> FailuresOf(string lists) => Numbers().Match(lists) is { Success: true } found
        ? [.. found.Groups["numbers"].Value.Split(',').Select(number => int.Parse(number, CultureInfo.InvariantCulture))]
        : [];

    // Attribute lists, their continued lines among them, up to the method they belong to.
    [GeneratedRegex(@"^(?<lists>(?:    [\[ ].*\n)+)    public (?:async )?(?:Task|ValueTask|void|Property|bool) (?<name>[A-Z]\w*_\w+)\(", RegexOptions.Multiline)]
    private static partial Regex Declared();

    [GeneratedRegex(@"^    \[(?:Fact|Theory|Property)\b", RegexOptions.Multiline)]
    private static partial Regex TestMark();

    [GeneratedRegex(@"^    \[Shows\((?<numbers>\d+(?:, \d+)*)\)\]$", RegexOptions.Multiline)]
    private static partial Regex Numbers();

    [GeneratedRegex(@"^ *\[[^""\n]*\bShows(?:Attribute)?\b", RegexOptions.Multiline)]
    private static partial Regex Mark();
}
