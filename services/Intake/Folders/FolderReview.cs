using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;

namespace LabPipeline.Intake.Folders;

/// <summary>Sorts what one scan found into files to take, files still settling, and files held with a reason.</summary>
public sealed class FolderReview(FolderMemory memory, ProfileShelf profiles)
{
    // Some memory cards and shares keep times of change in steps of two seconds.
    private static readonly TimeSpan CoarsestTime = TimeSpan.FromSeconds(2);

    public FolderFindings Sort(IReadOnlyList<SeenFile> seen)
    {
        memory.ForgetAllBut(seen);
        var ready = new List<ReadyFile>();
        var held = new List<HeldEntry>();
        var settling = 0;
        foreach (var file in seen)
        {
            var (readiness, profile) = Judge(file);
            switch (readiness.State)
            {
                case ReadinessState.Ready:
                    ready.Add(new ReadyFile(file, profile!));
                    break;
                case ReadinessState.Held:
                    held.Add(new HeldEntry(file, readiness.ReasonCode, readiness.Reason));
                    break;
                default:
                    settling++;
                    break;
            }
        }

        return new FolderFindings(ready, held, settling);
    }

    private (Readiness Readiness, Profile? Profile) Judge(SeenFile file)
    {
        if (file.Kind == SeenKind.Link)
        {
            return (Readiness.Held("file.link", $"{file.Name}: a link is never followed; copy the file itself into the folder."), null);
        }

        if (file.Kind == SeenKind.Directory)
        {
            return (Readiness.Held("file.folder", $"{file.Name}: a folder lies among the files; put the files themselves into the drop folder."), null);
        }

        var observation = memory.Observe(file);

        // Pipes and devices report no bytes and would block whoever opens them, so nothing without bytes is ever opened.
        if (file.Bytes == 0)
        {
            return (Readiness.Held("file.empty", $"{file.Name}: found 0 bytes; expected an export with rows. Export it again, or remove it."), null);
        }

        var choice = profiles.Choose(file.Name);
        return choice.Profile is null
            ? (Readiness.Held(choice.ReasonCode, choice.Reason), null)
            : (Complete(file, observation, choice.Profile), choice.Profile);
    }

    private static Readiness Complete(SeenFile file, Observation observation, Profile profile)
    {
        try
        {
            return CompletenessPolicy.Decide(
                profile.Files,
                file,
                observation,
                IsAnnounced(file),
                () => FileEnding.IsAsPromised(file.Path, profile));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Unreadable(file, exception);
        }
    }

    // Left over from an earlier file of this name, a done file says nothing about this one.
    private static bool IsAnnounced(SeenFile file)
    {
        var done = new FileInfo(file.Path + FileNames.DoneEnding);
        return done.Exists && SeenFile.ModifiedAtOf(done) + CoarsestTime >= file.ModifiedAt;
    }

    /// <summary>The verdict on a file that cannot be opened or copied now; it is tried again with every scan.</summary>
    public static Readiness Unreadable(SeenFile file, Exception exception) => Readiness.Held(
        "file.unreadable",
        DiskRoom.IsUsedUp(exception)
            ? $"{file.Name}: cannot be copied into the archive ({exception.Message}); make room on the disk of the data folder."
            : $"{file.Name}: cannot be read ({exception.Message}); check its rights, or close the program that holds it.");
}
