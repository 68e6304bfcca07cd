namespace LabPipeline.Intake.Folders;

/// <summary>Tells a full disk from other faults of input and output.</summary>
internal static class DiskRoom
{
    // The low half of an exception's number: ENOSPC and EDQUOT on Linux, ERROR_HANDLE_DISK_FULL and ERROR_DISK_FULL on Windows.
    private static readonly int[] Full = OperatingSystem.IsWindows() ? [39, 112] : [28, 122];

    public static bool IsUsedUp(Exception exception) => exception is IOException && Full.Contains(exception.HResult & 0xFFFF);
}
