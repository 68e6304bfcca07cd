using System.Runtime.CompilerServices;

namespace LabPipeline.Testing;

/// <summary>The folder that holds the solution.</summary>
public static class RepositoryFolder
{
    public static string Root { get; } = Find();

    private static string Find([CallerFilePath] string here = "")
    {
        var folder = Path.GetDirectoryName(here)!;
        while (!File.Exists(Path.Combine(folder, "LabPipeline.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }
}
