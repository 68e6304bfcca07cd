using LabPipeline.Intake.Folders;
using LabPipeline.Warehouse.Durability;

namespace LabPipeline.Intake.Storing;

/// <summary>Moves originals out of the drop folder once the warehouse has them; nothing is deleted.</summary>
public static class PutAway
{
    /// <summary>Moves the original, unless an instrument has written another file under its name meanwhile: that one stays to be read.</summary>
    public static void Move(DropFolder folder, TakenFile taken)
    {
        var file = taken.File;
        if (!file.LiesAt(file.Path))
        {
            return;
        }

        var target = FileNames.FreePath(taken.RefusedBecause is null ? folder.TakenPath : folder.RefusedPath, file.Name);
        if (taken.RefusedBecause is not null)
        {
            File.WriteAllText(target + ".reason.txt", taken.RefusedBecause + Environment.NewLine);
            CrashPoint.Passed(DurableStep.ReasonWritten);
        }

        File.Move(file.Path, target);
        CrashPoint.Passed(DurableStep.OriginalMoved);
        if (!file.LiesAt(target))
        {
            // It changed between the look and the move. Under a free name, since the next one may lie at its own already.
            File.Move(target, FileNames.FreePath(folder.Path, file.Name));
            return;
        }

        var done = file.Path + FileNames.DoneEnding;
        if (File.Exists(done))
        {
            File.Move(done, target + FileNames.DoneEnding, overwrite: true);
        }
    }
}
