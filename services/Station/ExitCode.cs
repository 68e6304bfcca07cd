namespace LabPipeline.Station;

/// <summary>What a command tells the shell.</summary>
public static class ExitCode
{
    public const int Done = 0;

    /// <summary>The input has faults, all of which were printed; nothing was changed.</summary>
    public const int Faults = 1;

    /// <summary>The command line itself is wrong, or the command could not do its work.</summary>
    public const int Failed = 2;

    /// <summary>What was asked for does not exist.</summary>
    public const int NotFound = 3;
}
