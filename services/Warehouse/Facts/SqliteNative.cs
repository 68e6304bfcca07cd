using System.Runtime.InteropServices;

namespace LabPipeline.Warehouse.Facts;

/// <summary>What the driver's package does not hand on of its own SQLite library: tables a program gives.</summary>
/// <remarks>The calls that only set a value are over in nanoseconds and call nobody back, so they need not announce themselves to the collector.</remarks>
internal static unsafe partial class SqliteNative
{
    private const string Library = "e_sqlite3";

    // SQLite copies the text before the call returns.
    private const nint Transient = -1;

    public static void GiveText(nint context, ReadOnlySpan<byte> text)
    {
        fixed (byte* first = text)
        {
            ResultText(context, first, text.Length, Transient);
        }
    }

    [LibraryImport(Library, EntryPoint = "sqlite3_create_module", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    public static partial int CreateModule(nint database, string name, nint* module, nint state);

    [LibraryImport(Library, EntryPoint = "sqlite3_declare_vtab", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    public static partial int DeclareTable(nint database, string sql);

    [LibraryImport(Library, EntryPoint = "sqlite3_result_int64")]
    [SuppressGCTransition]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    public static partial void Give(nint context, long number);

    [LibraryImport(Library, EntryPoint = "sqlite3_result_double")]
    [SuppressGCTransition]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    public static partial void Give(nint context, double number);

    [LibraryImport(Library, EntryPoint = "sqlite3_result_text")]
    [SuppressGCTransition]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
    private static partial void ResultText(nint context, byte* text, int length, nint destructor);
}
