using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.Testing;

/// <summary>A file system of a few megabytes that can run full and be made larger; where it cannot be mounted the test is skipped.</summary>
public sealed class SmallVolume : IDisposable
{
    private readonly ScratchFolder _folder = new();

    /// <exception cref="SkippedException">This user may not mount file systems.</exception>
    public SmallVolume(int megabytes)
    {
        if (!OperatingSystem.IsLinux() || Run("mount", "-t", "tmpfs", "-o", Size(megabytes), "tmpfs", _folder.Path) != 0)
        {
            _folder.Dispose();
            throw new SkippedException("mounting a small file system takes Linux and a privileged user");
        }
    }

    public string Path => _folder.Path;

    public void Resize(int megabytes) => Run("mount", "-o", "remount," + Size(megabytes), _folder.Path);

    public void Dispose()
    {
        Run("umount", "-l", _folder.Path);
        _folder.Dispose();
    }

    private static string Size(int megabytes) => string.Create(CultureInfo.InvariantCulture, $"size={megabytes}m");

    private static int Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardError = true };
        Array.ForEach(arguments, start.ArgumentList.Add);
        using var process = Process.Start(start)!;
        process.WaitForExit();
        return process.ExitCode;
    }
}
