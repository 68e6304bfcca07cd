using System.Diagnostics;
using LabPipeline.Testing;

namespace LabPipeline.Benchmarks;

/// <summary>The station as it is installed, published once a run for this machine: a build's output would spend its first seconds compiling itself.</summary>
internal static class PublishedStation
{
    private static readonly Lazy<Task<string>> Published = new(PublishAsync);

    /// <summary>The program's assembly, for <c>dotnet</c>.</summary>
    public static Task<string> PathAsync() => Published.Value;

    private static async Task<string> PublishAsync()
    {
        Figures.Print($"publishing the station");
        var folder = Path.Combine(AppContext.BaseDirectory, "published");
        using var publish = Process.Start(new ProcessStartInfo(
            "dotnet",
            [
                "publish", Path.Combine(RepositoryFolder.Root, "services", "Station"), "-c", "Release", "--use-current-runtime",
                "--artifacts-path", Path.Combine(folder, "build"), "-o", Path.Combine(folder, "station"), "-v", "quiet",
            ]))!;
        await publish.WaitForExitAsync();
        return publish.ExitCode == 0
            ? Path.Combine(folder, "station", "LabPipeline.Station.dll")
            : throw new InvalidOperationException($"The station was not published: dotnet ended with {publish.ExitCode}.");
    }
}
