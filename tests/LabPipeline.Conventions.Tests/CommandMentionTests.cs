using System.Text.RegularExpressions;
using LabPipeline.Station;
using Spectre.Console;

namespace LabPipeline.Conventions.Tests;

/// <summary>Every command that a page of the docs or a text of the program points to can be given.</summary>
public sealed partial class CommandMentionTests
{
    [Fact]
    public async Task Commands_WhenTextsPointToThem_AreKnownToTheCommandLine()
    {
        var mentions = Texts().SelectMany(Mentions).Distinct().Order(StringComparer.Ordinal).ToList();

        Assert.True(mentions.Count >= 20, $"Only {mentions.Count} mentions found: the pattern no longer fits the texts.");
        var unknown = new List<string>();
        foreach (var mention in mentions)
        {
            if (!await IsKnownAsync(mention))
            {
                unknown.Add(mention);
            }
        }

        Assert.Empty(unknown);
    }

    [Theory]
    [InlineData("alert")]
    [InlineData("season answer")]
    public async Task Command_WhenMistyped_IsSeenByThisCheck(string mention) => Assert.False(await IsKnownAsync(mention));

    /// <summary>Asks for its help, which runs nothing.</summary>
    private static async Task<bool> IsKnownAsync(string words)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(TextWriter.Null) });
        return await StationApp.RunAsync([.. words.Split(' '), "--help"], console, TextWriter.Null) == 0;
    }

    private static IEnumerable<string> Mentions(string text) => Mention().Matches(text).Select(match => match.Groups["words"].Value);

    private static IEnumerable<string> Texts()
    {
        var separator = Path.DirectorySeparatorChar;
        return new[] { "services", "docs" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, folder), "*", SearchOption.AllDirectories))
            .Where(file => Path.GetExtension(file) is ".cs" or ".md" or ".sql" or ".resx"
                && !file.Contains($"{separator}bin{separator}", StringComparison.Ordinal)
                && !file.Contains($"{separator}obj{separator}", StringComparison.Ordinal))
            .Append(Path.Combine(RepositoryFolder.Root, "README.md"))
            .Append(Path.Combine(RepositoryFolder.Root, "DEVELOPERS.md"))
            .Select(File.ReadAllText);
    }

    // 'station plan load', `station alerts --all`, dotnet run --project services/Station -- season grid, docker compose run --rm station demo
    [GeneratedRegex("(?:['`]station|services/Station --|--rm station) (?<words>[a-z]+(?:-[a-z]+)*(?: [a-z]+(?:-[a-z]+)*)?)")]
    private static partial Regex Mention();
}
