using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace LabPipeline.Intake.Archive;

/// <summary>Lets the system begin to write a file without waiting for it, so that flushing many one after another finds most of the work done.</summary>
/// <remarks>Only a hint: the flush that follows is what makes the file durable. Other systems than Linux have none.</remarks>
internal static partial class EarlyWriting
{
    // SYNC_FILE_RANGE_WRITE; a length of 0 means to the end.
    private const uint BeginOnly = 2;

    public static void Begin(SafeFileHandle file)
    {
        if (OperatingSystem.IsLinux())
        {
            _ = SyncFileRange(file, 0, 0, BeginOnly);
        }
    }

    [LibraryImport("libc", EntryPoint = "sync_file_range")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SyncFileRange(SafeFileHandle file, long from, long length, uint flags);
}
