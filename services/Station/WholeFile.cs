namespace LabPipeline.Station;

/// <summary>Writes a command's output: the file appears whole or not at all; one that was there stays until then.</summary>
internal static class WholeFile
{
    /// <exception cref="StationException">The folder does not exist.</exception>
    public static async Task WriteAsync(string path, byte[] content, CancellationToken cancellationToken)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        if (!Directory.Exists(folder))
        {
            throw new StationException(ExitCode.NotFound, $"There is no folder {folder} for {Path.GetFileName(path)}; make it first.");
        }

        var unfinished = $"{path}.{Path.GetRandomFileName()}";
        try
        {
            await File.WriteAllBytesAsync(unfinished, content, cancellationToken);
            File.Move(unfinished, path, overwrite: true);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }

    public static Task WriteAsync(string path, string content, CancellationToken cancellationToken) =>
        WriteAsync(path, System.Text.Encoding.UTF8.GetBytes(content), cancellationToken);
}
