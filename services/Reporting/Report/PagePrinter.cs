using System.ComponentModel;
using System.Diagnostics;

namespace LabPipeline.Reporting.Report;

/// <summary>Prints a page to PDF with a headless Chromium, where there is one.</summary>
public static class PagePrinter
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "chrome"];

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <param name="stated">Path of the program; null to look for it on the search path.</param>
    /// <returns>Path of the program, or null when there is none.</returns>
    public static string? Find(string? stated) => stated is not null
        ? File.Exists(stated) ? stated : null
        : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .SelectMany(folder => Names.Select(name => Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name)))
            .FirstOrDefault(File.Exists);

    /// <returns>Null when the file was written, otherwise what went wrong.</returns>
    public static async Task<string?> PrintAsync(string program, string pagePath, string pdfPath, CancellationToken cancellationToken)
    {
        ArgumentException.ThrowIfNullOrEmpty(program);
        var profile = Directory.CreateTempSubdirectory("labpipeline-print-");
        try
        {
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
            patience.CancelAfter(Patience);
            using var process = Process.Start(Start(program, pagePath, pdfPath, profile.FullName))!;
            return await WaitAsync(process, pdfPath, patience.Token, cancellationToken).ConfigureAwait(false);
        }
        catch (Win32Exception fault)
        {
            return $"{program} could not be started: {fault.Message}";
        }
        finally
        {
            profile.Delete(recursive: true);
        }
    }

    private static ProcessStartInfo Start(string program, string pagePath, string pdfPath, string profile)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardError = true, RedirectStandardOutput = true };
        // The page is our own and holds no script; as root the browser refuses to start with its sandbox.
        string[] sandbox = string.Equals(Environment.UserName, "root", StringComparison.Ordinal) ? ["--no-sandbox"] : [];
        foreach (var argument in sandbox.Concat(["--headless", "--disable-gpu", "--no-first-run", $"--user-data-dir={profile}", "--no-pdf-header-footer", $"--print-to-pdf={Path.GetFullPath(pdfPath)}", new Uri(Path.GetFullPath(pagePath)).AbsoluteUri]))
        {
            start.ArgumentList.Add(argument);
        }

        return start;
    }

    private static async Task<string?> WaitAsync(Process process, string pdfPath, CancellationToken patience, CancellationToken cancellationToken)
    {
        try
        {
            var errors = process.StandardError.ReadToEndAsync(patience);
            await process.StandardOutput.ReadToEndAsync(patience).ConfigureAwait(false);
            await process.WaitForExitAsync(patience).ConfigureAwait(false);
            return process.ExitCode == 0 && File.Exists(pdfPath)
                ? null
                : $"{process.StartInfo.FileName} ended with code {process.ExitCode}: {(await errors.ConfigureAwait(false)).Trim()}";
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            cancellationToken.ThrowIfCancellationRequested();
            return $"{process.StartInfo.FileName} had not printed the page after {Patience.TotalMinutes:0} minutes and was stopped.";
        }
    }
}
