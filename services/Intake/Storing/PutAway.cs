using LabPipeline.Intake.Folders;

namespace LabPipeline.Intake.Storing;

/// <summary>Moves originals out of the drop folder once the warehouse has them; nothing is deleted.</summary>
public static class PutAway
{
    public static void Move(DropFolder folder, TakenFile taken)
    {
        var target = FileNames.FreePath(taken.RefusedBecause is null ? folder.TakenPath : folder.RefusedPath, taken.Name);
        if (taken.RefusedBecause is not null)
        {
            File.WriteAllText(target + ".reason.txt", taken.RefusedBecause + Environment.NewLine);
        }

        File.Move(taken.Path, target);
        var done = taken.Path + FileNames.DoneEnding;
        if (File.Exists(done))
        {
            File.Move(done, target + FileNames.DoneEnding, overwrite: true);
        }
    }
}
