namespace LabPipeline.Intake.Profiles;

/// <summary>What a row that cannot be read does to its file.</summary>
public enum BadRows
{
    RefuseFile,

    /// <summary>The row is set aside whole, shown and counted; the others are read.</summary>
    Park,
}
