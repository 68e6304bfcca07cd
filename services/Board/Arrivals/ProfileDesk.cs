using LabPipeline.Hosting;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse.Facts;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Arrivals;

/// <summary>The laboratory's profiles as they lie in the data folder now, and what they make of a file; nothing is stored.</summary>
public sealed class ProfileDesk(IOptions<LabOptions> lab)
{
    public const int RowsShown = 20;

    /// <summary>The profile documents of every kind of instrument, good or not, by the name of their kind's folder.</summary>
    public IReadOnlyList<(string Kind, ProfileResult Result)> List() => Directory.Exists(lab.Value.ProfileFolder)
        ?
        [
            .. Directory.EnumerateFiles(lab.Value.ProfileFolder, "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
                .Select(path => (Path.GetFileName(Path.GetDirectoryName(path)!), ProfileDocument.Parse(File.ReadAllText(path), Path.GetFileName(path)))),
        ]
        : [];

    /// <summary>The one profile that claims <paramref name="fileName"/> in the folder of <paramref name="kind"/>, or why there is none.</summary>
    public ProfileChoice Choose(string kind, string fileName)
    {
        var shelf = new ProfileShelf(Path.Combine(lab.Value.ProfileFolder, kind));
        shelf.Refresh();
        return shelf.Choose(fileName);
    }

    /// <summary>How the archived bytes of <paramref name="file"/> would be read today.</summary>
    public DryRunResult ReadArchived(Profile profile, SourceFile file, CancellationToken cancellationToken)
    {
        using var bytes = new FileArchive(lab.Value.ArchiveFolder).Open(file.ArchivedAs);
        return Read(profile, bytes, file.Name, cancellationToken);
    }

    public static DryRunResult Read(Profile profile, Stream bytes, string fileName, CancellationToken cancellationToken) =>
        DryRun.Read(profile, bytes, fileName, RowsShown, ReadLimits.Default, cancellationToken);
}
