using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Folders;

/// <summary>Decides from what was observed whether a file is complete; reads nothing itself.</summary>
/// <remarks>A lock probe proves nothing: on some systems a file still being written opens exclusively without complaint.</remarks>
public static class CompletenessPolicy
{
    /// <param name="rule">The rule of the file's profile.</param>
    /// <param name="file">The entry.</param>
    /// <param name="observation">How long it has been quiet.</param>
    /// <param name="doneFileThere">Whether the file that announces it is there, no older than it.</param>
    /// <param name="endsAsPromised">Asks for the last bytes; called only when the verdict hangs on them.</param>
    public static Readiness Decide(
        FileRule rule, SeenFile file, Observation observation, bool doneFileThere, Func<bool> endsAsPromised)
    {
        if (rule.Complete == Completeness.RenamedIn)
        {
            return Readiness.Ready;
        }

        if (rule.Complete == Completeness.DoneFile)
        {
            return doneFileThere
                ? Readiness.Ready
                : Readiness.Held("file.no-done-file", $"{file.Name}: waiting for {file.Name}{FileNames.DoneEnding}, which says that it is complete, written after it.");
        }

        if (observation.QuietFor < TimeSpan.FromSeconds(rule.QuietSeconds))
        {
            return Readiness.Settling;
        }

        return endsAsPromised() ? Readiness.Ready : Unfinished(rule, file);
    }

    private static Readiness Unfinished(FileRule rule, SeenFile file) => rule.Complete == Completeness.Trailer
        ? Readiness.Held(
            "file.no-trailer",
            $"{file.Name}: the last line does not begin with '{rule.TrailerText}'; the instrument may not have finished. Export it again, or finish the run.")
        : Readiness.Held(
            "file.unfinished",
            $"{file.Name}: the last line has no line end; the instrument may have stopped while writing. Export it again under the same name.");
}
