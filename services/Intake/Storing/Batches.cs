namespace LabPipeline.Intake.Storing;

/// <summary>Groups files so that one commit serves many small ones.</summary>
/// <remarks>The first groups are small and each is twice the one before: storing begins soon, and never waits long for copying.</remarks>
public static class Batches
{
    private const int First = 25;

    public static IEnumerable<IReadOnlyList<ReadyFile>> Split(IReadOnlyList<ReadyFile> files, int mostFiles, long mostBytes)
    {
        var batch = new List<ReadyFile>();
        long bytes = 0;
        var most = Math.Min(First, mostFiles);
        foreach (var file in files)
        {
            if (batch.Count > 0 && (batch.Count == most || bytes + file.File.Bytes > mostBytes))
            {
                yield return batch;
                batch = [];
                bytes = 0;
                most = Math.Min(most * 2, mostFiles);
            }

            batch.Add(file);
            bytes += file.File.Bytes;
        }

        if (batch.Count > 0)
        {
            yield return batch;
        }
    }
}
