using System.ComponentModel;
using System.Runtime.InteropServices;

namespace LabPipeline.Intake.Archive;

/// <summary>Makes the names in a folder durable. A file's own flush does not: after power loss its name may be missing.</summary>
/// <remarks>Windows journals names itself; elsewhere the folder must be flushed like a file, which .NET offers no call for.</remarks>
internal static partial class DirectoryFlush
{
    private const int ReadOnly = 0;

    public static void Flush(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var descriptor = Open(folder, ReadOnly);
        if (descriptor < 0)
        {
            throw new IOException($"Cannot open folder {folder} to flush it.", new Win32Exception(Marshal.GetLastPInvokeError()));
        }

        var failed = Sync(descriptor) != 0;
        var error = Marshal.GetLastPInvokeError();
        _ = Close(descriptor);
        if (failed)
        {
            throw new IOException($"Cannot flush folder {folder}.", new Win32Exception(error));
        }
    }

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Sync(int descriptor);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Close(int descriptor);
}
