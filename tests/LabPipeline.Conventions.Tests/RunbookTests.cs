using System.Text.RegularExpressions;

namespace LabPipeline.Conventions.Tests;

/// <summary>docs/runbook.md says what to do at each warning and error a service can log.</summary>
public sealed partial class RunbookTests
{
    [Fact]
    public void Alarms_WhenServicesLogThem_StandInTheRunbookAndNoOthersDo()
    {
        var logged = Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "services"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(file => Logged().Matches(File.ReadAllText(file)))
            .Select(match => match.Groups["name"].Value)
            .Distinct()
            .Order(StringComparer.Ordinal);

        var described = Described().Matches(File.ReadAllText(Path.Combine(RepositoryFolder.Root, "docs", "runbook.md"))).Select(match => match.Groups["name"].Value);

        Assert.Equal(logged, described);
    }

    [GeneratedRegex(@"Log(?:Warning|Error|Critical)\(\s*(?:\w+,\s*)?""(?<name>[A-Z]\w+)")]
    private static partial Regex Logged();

    [GeneratedRegex(@"^\| `(?<name>[A-Z]\w+)` \|", RegexOptions.Multiline)]
    private static partial Regex Described();
}
