namespace LabPipeline.Station;

/// <summary>Writes a command's output: the file appears whole or not at all; one that was there stays until then.</summary>
internal static class WholeFile
{
    public static Task WriteAsync(string path, string content, CancellationToken cancellationToken) =>
        WriteAsync(path, System.Text.Encoding.UTF8.GetBytes(content), cancellationToken);

    public static Task WriteAsync(string path, byte[] content, CancellationToken cancellationToken) =>
        WriteAsync(path, stream => stream.WriteAsync(content, cancellationToken).AsTask(), cancellationToken);

    /// <exception cref="StationException">The folder does not exist.</exception>
    public static async Task WriteAsync(string path, Func<Stream, Task> write, CancellationToken cancellationToken)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        if (!Directory.Exists(folder))
        {
            throw new StationException(ExitCode.NotFound, $"There is no folder {folder} for {Path.GetFileName(path)}; make it first.");
        }

        var unfinished = $"{path}.{Path.GetRandomFileName()}";
        try
        {
            var file = new FileStream(unfinished, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
            await using (file)
            {
                await write(file);
                await file.FlushAsync(cancellationToken);
                file.Flush(flushToDisk: true);
            }

            File.Move(unfinished, path, overwrite: true);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }
}
