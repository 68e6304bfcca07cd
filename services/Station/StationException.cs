namespace LabPipeline.Station;

/// <summary>A command cannot go on; the message is for the person at the keyboard.</summary>
public sealed class StationException(int exitCode, string message) : Exception(message)
{
    public int ExitCode => exitCode;
}
