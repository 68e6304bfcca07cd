using System.Runtime.CompilerServices;
using System.Text;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests;

/// <summary>The embedded check values are those of the reference folder, where that folder lies beside the repository.</summary>
public sealed class ReferenceOriginTests
{
    // Two of its columns are named alike there; ours are named apart so that a test can ask for each. The rows are the same.
    private const string RenamedHeader = "H_check_error_detection.csv";

    [Fact]
    public void EmbeddedFiles_WhenTheReferenceFolderIsThere_EqualItsFiles()
    {
        var folder = ReferenceFolder();
        Assert.SkipUnless(Directory.Exists(folder), "There is no folder shared/reference beside the repository; the embedded copies stand alone.");
        var original = Directory.EnumerateFiles(folder, "*.csv", SearchOption.AllDirectories)
            .ToDictionary(path => Path.GetRelativePath(folder, path).Replace(Path.DirectorySeparatorChar, '.').Replace('/', '.'));
        var embedded = ReferenceTable.ResourceNames;

        Assert.Equal(original.Keys.Order(StringComparer.Ordinal), embedded.Order(StringComparer.Ordinal));
        Assert.All(embedded, name => Assert.Equal(Comparable(name, File.ReadAllText(original[name], Encoding.UTF8)), Comparable(name, ReferenceTable.TextOf(name))));
    }

    private static string Comparable(string name, string text)
    {
        var lines = text.ReplaceLineEndings("\n");
        return name == RenamedHeader ? lines[lines.IndexOf('\n', StringComparison.Ordinal)..] : lines;
    }

    private static string ReferenceFolder([CallerFilePath] string here = "")
    {
        var root = Path.GetDirectoryName(here)!;
        while (!File.Exists(Path.Combine(root, "LabPipeline.sln")))
        {
            root = Path.GetDirectoryName(root)!;
        }

        return Path.Combine(root, "..", "shared", "reference");
    }
}
