using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>A program of the product as a process of its own, as a user starts it; it can be killed like by a power cut of the process.</summary>
internal sealed class ProductProcess : IDisposable
{
    /// <summary>A shell that hands a stop on to its child and ends with the child's exit code.</summary>
    private static readonly string[] PassingOn = ["-c", "trap 'kill -TERM $child' TERM; dotnet \"$@\" & child=$!; wait $child; wait $child", "sh"];

    private readonly Process _process;
    private readonly Task<string> _output;
    private readonly Task<string> _errors;
    private readonly TaskCompletionSource _said = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private ProductProcess(Process process)
    {
        _process = process;
        _output = ReadAsync(process.StandardOutput);
        _errors = process.StandardError.ReadToEndAsync();
    }

    /// <summary>Ends with the first line the program prints, or with the program.</summary>
    public Task FirstWord => _said.Task;

    public int Id => _process.Id;

    public bool HasExited => _process.HasExited;

    public int ExitCode => _process.ExitCode;

    /// <param name="program">Its short name, such as <c>Station</c> or <c>Quality</c>.</param>
    /// <param name="arguments">Its command line.</param>
    public static ProductProcess Start(string program, params IEnumerable<string> arguments) => Start(program, [], arguments);

    /// <param name="program">Its short name, such as <c>Station</c> or <c>Quality</c>.</param>
    /// <param name="settings">Settings in its environment, two underscores for each colon.</param>
    /// <param name="arguments">Its command line.</param>
    /// <param name="parent">A shell to start it from, for a program that looks at who its parent is.</param>
    public static ProductProcess Start(
        string program, IEnumerable<KeyValuePair<string, string>> settings, IEnumerable<string> arguments, string? parent = null)
    {
        var start = new ProcessStartInfo(parent ?? "dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = AppContext.BaseDirectory,
        };
        foreach (var word in parent is null ? [] : PassingOn)
        {
            start.ArgumentList.Add(word);
        }

        start.ArgumentList.Add(Path.Combine(FolderOf(program), $"LabPipeline.{program}.dll"));
        foreach (var (key, value) in settings)
        {
            start.Environment[key] = value;
        }

        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return new ProductProcess(Process.Start(start)!);
    }

    /// <summary>The program's own output folder: beside the tests it would lie with their frameworks instead of its own.</summary>
    private static string FolderOf(string program)
    {
        var framework = new DirectoryInfo(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory));
        var configuration = framework.Parent!;
        var repository = configuration.Parent!.Parent!.Parent!.Parent!;
        return Path.Combine(repository.FullName, "services", program, "bin", configuration.Name, framework.Name);
    }

    public async Task<(int ExitCode, string Output, string Errors)> FinishAsync(CancellationToken cancellationToken)
    {
        await _process.WaitForExitAsync(cancellationToken);
        return (_process.ExitCode, await _output, await _errors);
    }

    /// <summary>Lets it stand still for a while, as a machine does that swaps or is suspended.</summary>
    public async Task FreezeAsync(TimeSpan length, CancellationToken cancellationToken)
    {
        await SignalAsync("STOP", cancellationToken);
        await Task.Delay(length, cancellationToken);
        await SignalAsync("CONT", cancellationToken);
    }

    /// <summary>As a service manager stops it.</summary>
    /// <returns>Its exit code.</returns>
    public async Task<int> StopAsync(CancellationToken cancellationToken)
    {
        await SignalAsync("TERM", cancellationToken);
        await _process.WaitForExitAsync(cancellationToken);
        return _process.ExitCode;
    }

    /// <summary>kill -9 on Unix: no handler runs.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    private async Task SignalAsync(string signal, CancellationToken cancellationToken)
    {
        using var sender = Process.Start("kill", [$"-{signal}", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        await sender.WaitForExitAsync(cancellationToken);
    }

    private async Task<string> ReadAsync(StreamReader output)
    {
        var first = await output.ReadLineAsync();
        _said.TrySetResult();
        return first + Environment.NewLine + await output.ReadToEndAsync();
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
