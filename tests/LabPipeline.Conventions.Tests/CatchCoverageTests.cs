using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace LabPipeline.Conventions.Tests;

/// <summary>What happens after a failure is code like any other: each catch block of the services is reached by a test.</summary>
/// <remarks>
/// Needs a measurement of this very source first: <c>dotnet test LabPipeline.sln --collect "Code Coverage;Format=cobertura" --results-directory FOLDER</c>,
/// or the same for one test project after the other into one folder; then this test with <c>LABPIPELINE_COVERAGE=FOLDER</c>. Processes that tests
/// start of their own are not measured. What no test can reach guards nothing: it is deleted, or written so that a double can make it happen.
/// </remarks>
public sealed partial class CatchCoverageTests(ITestOutputHelper output)
{
    [Fact]
    public void CatchBlocks_WhenTestsWereMeasured_AreAllReached()
    {
        var folder = Environment.GetEnvironmentVariable("LABPIPELINE_COVERAGE");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "no measurement: LABPIPELINE_COVERAGE names no folder");
        var sources = Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "services"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).ToList();
        var reports = Directory.GetFiles(folder!, "*.cobertura.xml", SearchOption.AllDirectories);
        Assert.True(reports.Length > 0, $"{folder} holds no measurement.");
        Assert.True(
            reports.Min(File.GetLastWriteTimeUtc) > sources.Max(File.GetLastWriteTimeUtc), "The sources changed after they were measured; its line numbers mean other lines now.");

        var hits = ReadHits(reports);
        var blocks = sources.SelectMany(BlocksOf).ToList();
        var missed = blocks.Where(block => !IsReached(hits.GetValueOrDefault(block.File), block)).Select(Describe).Order(StringComparer.Ordinal).ToList();

        output.WriteLine($"{blocks.Count} catch blocks, {blocks.Count - missed.Count} reached");
        Assert.True(missed.Count == 0, $"{missed.Count} of {blocks.Count} catch blocks were not reached:\n{string.Join('\n', missed)}");
    }

    private static string Describe(Block block) => string.Create(
        CultureInfo.InvariantCulture, $"{Path.GetRelativePath(RepositoryFolder.Root, block.File)}, {block.Method}: {block.Text} (line {block.First})");

    private static bool IsReached(Dictionary<int, int>? hits, Block block) =>
        hits is not null && Enumerable.Range(block.First + 1, block.Last - block.First).Any(line => hits.GetValueOrDefault(line) > 0);

    /// <summary>From each catch to the brace that closes it.</summary>
    private static IEnumerable<Block> BlocksOf(string file)
    {
        var lines = File.ReadAllLines(file);
        var method = "";
        for (var first = 0; first < lines.Length; first++)
        {
            method = Method().Match(lines[first]) is { Success: true } declared ? declared.Groups["name"].Value : method;
            if (Catch().IsMatch(lines[first]))
            {
                var text = lines[first].TrimStart();
                var end = lines[first][..^text.Length] + "}";
                yield return new Block(file, first + 1, Array.FindIndex(lines, first, line => line.TrimEnd() == end) + 1, method, text);
            }
        }
    }

    private static Dictionary<string, Dictionary<int, int>> ReadHits(IEnumerable<string> reports)
    {
        var hits = new Dictionary<string, Dictionary<int, int>>(StringComparer.Ordinal);
        foreach (var type in reports.SelectMany(report => XDocument.Load(report).Descendants("class")))
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

    /// <summary>A member's declaration: methods stand one step in, inside a type.</summary>
    [GeneratedRegex(@"^ {4}(public|protected|internal|private) [^=;]*?\b(?<name>\w+)(<[\w, ]+>)?\(")]
    private static partial Regex Method();

    private sealed record Block(string File, int First, int Last, string Method, string Text);
}
