using System.Globalization;
using System.Text.RegularExpressions;

namespace LabPipeline.Conventions.Tests;

/// <summary>docs/specs/reliability.md names a test for every way to fail, or says why there is none; a test that was renamed or removed shows here.</summary>
public sealed partial class ReliabilityTableTests
{
    private const int Rows = 82;

    private static readonly string[] Reasons = ["Does not apply: ", "Open: "];

    private static readonly IReadOnlyList<string[]> Table =
    [
        .. File.ReadLines(Path.Combine(RepositoryFolder.Root, "docs", "specs", "reliability.md"))
            .Where(line => NumberedRow().IsMatch(line))
            .Select(line => line.Trim().Trim('|').Split('|', StringSplitOptions.TrimEntries)),
    ];

    [Fact]
    public void Table_WhenCounted_HasEachFailureOnce() =>
        Assert.Equal(Enumerable.Range(1, Rows), Table.Select(row => int.Parse(row[0], CultureInfo.InvariantCulture)));

    [Fact]
    public void Rows_WhenTheyNameTests_NameOnesThatExist()
    {
        var there = TestNames();

        Assert.Empty(Table.SelectMany(row => Named().Matches(row[3]).Select(match => (Row: row[0], Test: match.Groups["name"].Value)))
            .Where(named => !there.Contains(named.Test)).Select(named => $"{named.Row}: {named.Test}"));
    }

    [Fact]
    public void Rows_WithoutATest_SayWhy() =>
        Assert.Empty(Table.Where(row => !Named().IsMatch(row[3]) && !Reasons.Any(reason => row[3].StartsWith(reason, StringComparison.Ordinal) && row[3].Length > reason.Length + 20)).Select(row => row[0]));

    private static HashSet<string> TestNames() =>
    [
        .. Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "tests"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"))
            .SelectMany(path => Declared().Matches(File.ReadAllText(path)))
            .Select(match => match.Groups["name"].Value),
    ];

    [GeneratedRegex(@"^\| \d+ \|")]
    private static partial Regex NumberedRow();

    [GeneratedRegex("`(?<name>[A-Z][A-Za-z0-9]*_[A-Za-z0-9_]+)`")]
    private static partial Regex Named();

    [GeneratedRegex(@"^    public (?:async )?(?:Task|void|Property|bool) (?<name>[A-Z]\w*_\w+)\(", RegexOptions.Multiline)]
    private static partial Regex Declared();
}
