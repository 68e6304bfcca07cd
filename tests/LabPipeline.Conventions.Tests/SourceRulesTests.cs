namespace LabPipeline.Conventions.Tests;

/// <summary>Habits a reader relies on: short files, one public type a file, the top level as agreed.</summary>
public sealed class SourceRulesTests
{
    private const int LongestFile = 300;

    private static readonly string Root = RepositoryFolder.Root;

    [Fact]
    public void Files_WhenCounted_HaveAtMostThreeHundredLines() =>
        Assert.Empty(Sources().Where(path => File.ReadLines(path).Count() > LongestFile).Select(path => Path.GetRelativePath(Root, path)));

    [Fact]
    public void ProductFiles_WhenTheyDeclarePublicTypes_DeclareOneNamedAsTheFile()
    {
        var wrong = new List<string>();
        foreach (var path in Sources().Where(path => !path.Contains($"{Path.DirectorySeparatorChar}tests{Path.DirectorySeparatorChar}", StringComparison.Ordinal)))
        {
            var declared = File.ReadLines(path).Select(DeclaredType).OfType<string>().ToList();
            if (declared.Count > 1 || (declared.Count == 1 && declared[0] != Path.GetFileNameWithoutExtension(path).Split('.')[0]))
            {
                wrong.Add($"{Path.GetRelativePath(Root, path)}: {string.Join(", ", declared)}");
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public void TopLevel_WhenListed_HoldsOnlyWhatWasAgreed()
    {
        string[] agreed = ["README.md", "DEVELOPERS.md", "LICENSE", "docker-compose.yml", "LabPipeline.sln", "services", "contracts", "tests", "docs"];
        var found = Directory.EnumerateFileSystemEntries(Root).Select(path => Path.GetFileName(path)!)
            .Where(name => !name.StartsWith('.') && !name.StartsWith("Directory.", StringComparison.Ordinal) && name is not "lab-data");

        Assert.Empty(found.Except(agreed));
    }

    /// <summary>Only types at the margin: nested ones belong to their owner.</summary>
    private static string? DeclaredType(string line)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (!line.StartsWith("public ", StringComparison.Ordinal))
        {
            return null;
        }

        var at = Array.FindIndex(words, word => word is "class" or "record" or "interface" or "enum" or "struct");
        if (at < 0 || at + 1 >= words.Length)
        {
            return null;
        }

        var name = words[at + 1] is "struct" or "class" ? words[at + 2] : words[at + 1];
        return name.Split('(', '<', ':', ';', '{')[0];
    }

    private static IEnumerable<string> Sources() => new[] { "contracts", "services", "tests" }
        .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories))
        .Where(path => !path.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"));
}
