namespace LabPipeline.Intake.Folders;

/// <summary>Where instruments drop files of one kind, and where the originals go afterwards.</summary>
/// <param name="Kind">Folder name of the kind, stored with each arrival.</param>
/// <param name="Path">The watched folder.</param>
public sealed record DropFolder(string Kind, string Path)
{
    /// <summary>Originals whose content is in the warehouse.</summary>
    public string TakenPath => System.IO.Path.Combine(Path, TakenName);

    /// <summary>Originals that were refused, each with its reason beside it.</summary>
    public string RefusedPath => System.IO.Path.Combine(Path, RefusedName);

    internal const string TakenName = "taken";

    internal const string RefusedName = "refused";

    /// <summary>Makes the folders; an instrument's share that came back empty is as good as new.</summary>
    public void Ensure()
    {
        Directory.CreateDirectory(Path);
        Directory.CreateDirectory(TakenPath);
        Directory.CreateDirectory(RefusedPath);
    }
}
