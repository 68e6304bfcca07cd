using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace LabPipeline.Conventions.Tests;

/// <summary>What happens after a failure is code like any other: each catch block of the services is reached by a test.</summary>
/// <remarks>
/// Needs a measurement first: <c>dotnet test LabPipeline.sln --collect "Code Coverage;Format=cobertura" --results-directory FOLDER</c>, then this
/// test with <c>LABPIPELINE_COVERAGE=FOLDER</c>. Processes that tests start of their own are not measured.
/// </remarks>
public sealed partial class CatchCoverageTests
{
    /// <summary>Blocks no test can reach, with the reason.</summary>
    private static readonly Dictionary<string, string> Unreachable = [];

    [Fact]
    public void CatchBlocks_WhenTestsWereMeasured_AreAllReached()
    {
        var folder = Environment.GetEnvironmentVariable("LABPIPELINE_COVERAGE");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "no measurement: LABPIPELINE_COVERAGE names no folder");
        var hits = ReadHits(folder!);

        var missed = Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "services"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(file => BlocksOf(file).Where(block => !IsReached(hits.GetValueOrDefault(file), block)).Select(block => Name(file, block.First)))
            .Where(name => !Unreachable.ContainsKey(name))
            .Order(StringComparer.Ordinal)
            .ToList();

        Assert.True(missed.Count == 0, $"{missed.Count} catch blocks were not reached:\n{string.Join('\n', missed)}");
    }

    private static string Name(string file, int line) =>
        string.Create(CultureInfo.InvariantCulture, $"{Path.GetRelativePath(RepositoryFolder.Root, file)}:{line}");

    private static bool IsReached(Dictionary<int, int>? hits, (int First, int Last) block) =>
        hits is not null && Enumerable.Range(block.First + 1, block.Last - block.First).Any(line => hits.GetValueOrDefault(line) > 0);

    /// <summary>Lines from a catch to the brace that closes it.</summary>
    private static IEnumerable<(int First, int Last)> BlocksOf(string file)
    {
        var lines = File.ReadAllLines(file);
        for (var first = 0; first < lines.Length; first++)
        {
            if (Catch().IsMatch(lines[first]))
            {
                var indent = lines[first].Length - lines[first].TrimStart().Length;
                var last = first + 1;
                while (lines[last].TrimEnd() != new string(' ', indent) + "}")
                {
                    last++;
                }

                yield return (first + 1, last + 1);
            }
        }
    }

    private static Dictionary<string, Dictionary<int, int>> ReadHits(string folder)
    {
        var hits = new Dictionary<string, Dictionary<int, int>>(StringComparer.Ordinal);
        foreach (var type in Directory.EnumerateFiles(folder, "*.cobertura.xml", SearchOption.AllDirectories).SelectMany(file => XDocument.Load(file).Descendants("class")))
        {
            var file = (string)type.Attribute("filename")!;
            var ofFile = hits.TryGetValue(file, out var known) ? known : hits[file] = [];
            foreach (var line in type.Descendants("line"))
            {
                var number = (int)line.Attribute("number")!;
                ofFile[number] = Math.Max(ofFile.GetValueOrDefault(number), (int)line.Attribute("hits")!);
            }
        }

        return hits;
    }

    [GeneratedRegex(@"^\s*catch\b")]
    private static partial Regex Catch();
}
