namespace LabPipeline.Intake.Profiles;

/// <summary>What a column the profile does not name does to its file.</summary>
public enum UnknownColumns
{
    Refuse,

    /// <summary>Left unread; the outcome lists it.</summary>
    Ignore,
}
