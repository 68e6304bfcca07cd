namespace LabPipeline.Hosting;

/// <summary>Where the embedded warehouse may lie.</summary>
public static class WarehousePlace
{
    /// <summary>The kind of drive <paramref name="folder"/> lies on; names that begin with a server are shares.</summary>
    public static DriveType DriveOf(string folder) =>
        folder.StartsWith(@"\\", StringComparison.Ordinal) ? DriveType.Network : new DriveInfo(folder).DriveType;

    /// <summary>SQLite's locks and its log do not hold on a file share: two machines could damage the file without any of them noticing.</summary>
    /// <exception cref="InvalidOperationException">The folder is on a share.</exception>
    public static void AssertLocal(string folder, DriveType drive)
    {
        if (drive == DriveType.Network)
        {
            throw new InvalidOperationException(
                $"The warehouse folder {folder} is on a network share; expected a disk of this computer. Drop folders may be shares: set Lab:DataFolder to a local folder and mount them inside its 'drop' folder, or use SQL Server.");
        }
    }
}
