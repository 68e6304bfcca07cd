using LabPipeline.Hosting;
using LabPipeline.Station.Demo;
using LabPipeline.Testing;
using Microsoft.Data.Sqlite;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Commands;

/// <summary>The demonstration season, processed once for all tests that only look at it.</summary>
public sealed class ProcessedDemo : IAsyncLifetime
{
    private readonly ScratchFolder _folder = new();

    public string DataFolder => _folder.Path;

    public async ValueTask InitializeAsync()
    {
        var lab = new LabOptions { DataFolder = DataFolder };
        var scenario = DemoScenario.Create();
        new DemoWriter(lab).Write(scenario);
        await new DemoRun(lab).RunAsync(scenario, (_, _) => { }, CancellationToken.None);
    }

    /// <summary>Runs a command line against the season and gives its exit code, what it printed, and what it printed as errors.</summary>
    public async Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments)
    {
        using var console = new TestConsole();
        console.Profile.Width = 400;
        using var errors = new StringWriter();
        var exitCode = await StationApp.RunAsync([.. arguments, "--data", DataFolder], console, errors);
        return (exitCode, console.Output, errors.ToString());
    }

    public ValueTask DisposeAsync()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
