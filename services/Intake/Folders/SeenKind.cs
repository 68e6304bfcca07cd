namespace LabPipeline.Intake.Folders;

/// <summary>What kind of directory entry a scan found.</summary>
public enum SeenKind
{
    RegularFile,
    Link,
    Directory,
}
