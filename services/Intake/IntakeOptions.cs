namespace LabPipeline.Intake;

/// <summary>How drop folders are watched.</summary>
public sealed class IntakeOptions
{
    public const string Section = "Intake";

    /// <summary>How long intake waits between looks at a drop folder when nothing wakes it. Default 1 s; at least 0.1 s.</summary>
    public TimeSpan ScanInterval { get; set; } = TimeSpan.FromSeconds(1);

    /// <summary>Most files committed together. Default 200, at most 1,000; one commit costs the same for one file as for all of them.</summary>
    public int FilesPerCommit { get; set; } = 200;

    /// <summary>Most bytes committed together, unless one file alone is larger. Default 8 MiB.</summary>
    public long BytesPerCommit { get; set; } = 8 * 1024 * 1024;
}
