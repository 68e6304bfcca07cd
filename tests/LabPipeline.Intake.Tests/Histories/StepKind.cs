namespace LabPipeline.Intake.Tests.Histories;

/// <summary>What can happen to a drop folder, and to the broker that is told of its files.</summary>
internal enum StepKind
{
    /// <summary>A file is written, over one of the same name where there is one.</summary>
    Drop,

    /// <summary>The instrument writes its last file of that name anew, with a row more or another value, whether or not the first was taken.</summary>
    ReExport,

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

    /// <summary>The process is started anew: intake and relay.</summary>
    Restart,

    /// <summary>The broker goes away, and keeps what it took.</summary>
    BrokerStop,

    /// <summary>The broker answers and takes nothing.</summary>
    BrokerBlock,

    /// <summary>The broker is there again and takes messages.</summary>
    BrokerBack,

    /// <summary>The connection breaks between the next message and its answer.</summary>
    AnswerLost,

    /// <summary>The relay has time to work.</summary>
    Relay,

    /// <summary>The broker hands out what it holds.</summary>
    Deliver,
}
