namespace LabPipeline.Intake.Storing;

/// <summary>Groups files so that one commit serves many small ones.</summary>
public static class Batches
{
    public static IEnumerable<IReadOnlyList<ReadyFile>> Split(IReadOnlyList<ReadyFile> files, int mostFiles, long mostBytes)
    {
        var batch = new List<ReadyFile>();
        long bytes = 0;
        foreach (var file in files)
        {
            if (batch.Count > 0 && (batch.Count == mostFiles || bytes + file.File.Bytes > mostBytes))
            {
                yield return batch;
                batch = [];
                bytes = 0;
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
