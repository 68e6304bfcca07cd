using System.Data.Common;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>Another process writes for longer than this one waits; the write is tried again.</summary>
internal sealed class WriteLockException(int answer, int seconds)
    : DbException($"The warehouse's write lock was not granted within {seconds} s (answer {answer}): another process is writing. The write is tried again.");
