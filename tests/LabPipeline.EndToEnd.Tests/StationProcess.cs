using System.Diagnostics;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>The station as a process of its own, as a user starts it; it can be killed like by a power cut of the process.</summary>
internal sealed class StationProcess : IDisposable
{
    private readonly Process _process;
    private readonly Task<string> _output;
    private readonly Task<string> _errors;

    private StationProcess(Process process)
    {
        _process = process;
        _output = process.StandardOutput.ReadToEndAsync();
        _errors = process.StandardError.ReadToEndAsync();
    }

    public bool HasExited => _process.HasExited;

    public int ExitCode => _process.ExitCode;

    public static StationProcess Start(params string[] arguments) => Start([], arguments);

    /// <param name="settings">Settings in its environment, two underscores for each colon.</param>
    /// <param name="arguments">Its command line.</param>
    public static StationProcess Start(IEnumerable<KeyValuePair<string, string>> settings, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = AppContext.BaseDirectory,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "LabPipeline.Station.dll"));
        foreach (var (key, value) in settings)
        {
            start.Environment[key] = value;
        }

        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return new StationProcess(Process.Start(start)!);
    }

    public async Task<(int ExitCode, string Output, string Errors)> FinishAsync(CancellationToken cancellationToken)
    {
        await _process.WaitForExitAsync(cancellationToken);
        return (_process.ExitCode, await _output, await _errors);
    }

    /// <summary>kill -9 on Unix: no handler runs.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
    }
}
