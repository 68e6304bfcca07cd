namespace LabPipeline.Testing;

/// <summary>An empty folder for one test, deleted with everything in it at the end.</summary>
public sealed class ScratchFolder : IDisposable
{
    public ScratchFolder() => Path = Directory.CreateTempSubdirectory("labpipeline-").FullName;

    public string Path { get; }

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose()
    {
        if (Directory.Exists(Path))
        {
            Directory.Delete(Path, recursive: true);
        }
    }
}
