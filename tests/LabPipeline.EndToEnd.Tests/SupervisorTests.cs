using LabPipeline.Testing;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>A service as systemd sees it. The words are those of sd_notify(3).</summary>
public sealed class SupervisorTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [Shows(80)]
    [InlineData("Quality")]
    [InlineData("Board")]
    public async Task Service_UnderSystemd_SaysThatItIsReadyAliveAndStopping(string program)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "systemd is of Linux only");
        using var folder = new ScratchFolder();
        using var systemd = new NotifySocket();

        // A service takes itself for one of systemd by its parent's name.
        var parent = File.CreateSymbolicLink(folder.File("systemd"), "/bin/sh").FullName;

        // The pulse is due each second: half of what the unit would allow.
        using var service = ProductProcess.Start(
            program,
            [new("NOTIFY_SOCKET", systemd.Address), new("WATCHDOG_USEC", "2000000"), new("Lab__DataFolder", folder.Path), new("Board__Url", "http://127.0.0.1:0")],
            [],
            parent);

        await systemd.HearAsync("READY=1", Patience, Stop);
        await systemd.HearAsync("WATCHDOG=1", Patience, Stop);
        await systemd.HearAsync("WATCHDOG=1", Patience, Stop);
        var stopped = service.StopAsync(Stop);
        await systemd.HearAsync("STOPPING=1", Patience, Stop);
        Assert.Equal(0, await stopped);
    }
}
