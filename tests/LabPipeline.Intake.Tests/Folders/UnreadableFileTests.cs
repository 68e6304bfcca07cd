using LabPipeline.Intake.Folders;

namespace LabPipeline.Intake.Tests.Folders;

/// <summary>Numbers of the operating system: errno(3), ENOSPC 28, EACCES 13; Windows' system error codes, ERROR_DISK_FULL 112, ERROR_SHARING_VIOLATION 32.</summary>
public sealed class UnreadableFileTests
{
    private static readonly SeenFile File = new("run1.csv", "/drop/sugar/run1.csv", 17, DateTimeOffset.UnixEpoch, SeenKind.RegularFile);

    [Fact]
    public void Unreadable_WhenTheDiskIsFull_AsksForRoomAndNotForRights()
    {
        var reason = FolderReview.Unreadable(File, new IOException("No space left on device", OperatingSystem.IsWindows() ? unchecked((int)0x80070070) : 28)).Reason;

        Assert.Contains("make room on the disk", reason, StringComparison.Ordinal);
        Assert.DoesNotContain("rights", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Unreadable_WhenAnotherProgramHoldsIt_SaysSo()
    {
        var reason = FolderReview.Unreadable(File, new IOException("in use", OperatingSystem.IsWindows() ? unchecked((int)0x80070020) : 13)).Reason;

        Assert.Contains("check its rights, or close the program that holds it", reason, StringComparison.Ordinal);
    }
}
