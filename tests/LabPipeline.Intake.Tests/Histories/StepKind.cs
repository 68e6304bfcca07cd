namespace LabPipeline.Intake.Tests.Histories;

/// <summary>What can happen to a drop folder.</summary>
internal enum StepKind
{
    /// <summary>A file is written, over one of the same name where there is one.</summary>
    Drop,

    /// <summary>A file in the folder is copied to another name, over what is there.</summary>
    Copy,

    /// <summary>A file in the folder gets another name.</summary>
    Rename,

    /// <summary>A file in the folder loses its end.</summary>
    Truncate,

    /// <summary>A person takes a file away again.</summary>
    Remove,

    /// <summary>Time passes.</summary>
    Wait,

    /// <summary>The wall clock is set, forward or back.</summary>
    ClockJump,

    /// <summary>Intake looks at the folder.</summary>
    Look,

    /// <summary>Intake looks, and its process ends before the originals are put away.</summary>
    LookAndCrash,

    /// <summary>Intake is started anew.</summary>
    Restart,
}
