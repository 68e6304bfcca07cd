using System.Diagnostics;
using System.Globalization;
using LabPipeline.Reporting.Report;
using LabPipeline.Testing;

namespace LabPipeline.Reporting.Tests.Printing;

/// <summary>Around programs that are not the browser one hoped for.</summary>
public sealed class PagePrinterTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Print_WhenTheProgramCannotBeStarted_SaysSo()
    {
        using var folder = new ScratchFolder();
        var program = folder.File("chromium");
        await File.WriteAllTextAsync(program, "no program", Stop);

        var fault = await PagePrinter.PrintAsync(program, folder.File("page.html"), folder.File("page.pdf"), Stop);

        Assert.StartsWith($"{program} could not be started: ", fault, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.File("page.pdf")));
    }

    [Fact]
    public async Task Print_WhenStopped_EndsTheProgramToo()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "the program is a shell script");
        using var folder = new ScratchFolder();
        var (program, number) = (folder.File("chromium"), folder.File("number"));
        await File.WriteAllTextAsync(program, $"#!/bin/sh\necho $$ > {number}.part && mv {number}.part {number}\nexec sleep 600\n", Stop);
#pragma warning disable CA1416 // Skipped on Windows above.
        File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
#pragma warning restore CA1416
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        var printing = PagePrinter.PrintAsync(program, folder.File("page.html"), folder.File("page.pdf"), stop.Token);
        await Wait.UntilAsync(() => Task.FromResult(File.Exists(number)));
        using var process = Process.GetProcessById(int.Parse(await File.ReadAllTextAsync(number, Stop), CultureInfo.InvariantCulture));

        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => printing);
        await process.WaitForExitAsync(Stop).WaitAsync(TimeSpan.FromSeconds(30), Stop);
    }
}
