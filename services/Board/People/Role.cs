namespace LabPipeline.Board.People;

/// <summary>What a person may do on the board; each role may also do what those before it may.</summary>
public enum Role
{
    /// <summary>Read every page.</summary>
    Look = 1,

    /// <summary>Enter bench sheets and note alerts as seen.</summary>
    Bench = 2,

    /// <summary>Settle alerts, take files out, accept re-exports.</summary>
    Manage = 3,

    /// <summary>People, keys, profiles.</summary>
    Administer = 4,
}
