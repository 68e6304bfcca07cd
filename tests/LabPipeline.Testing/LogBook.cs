using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Testing;

/// <summary>Keeps what was logged, so that a test can wait for it.</summary>
public sealed class LogBook<T> : ILogger<T>
{
    private readonly ConcurrentQueue<string> _lines = [];

    public IReadOnlyCollection<string> Lines => _lines;

    /// <summary>Waits until a line begins with <paramref name="start"/>.</summary>
    /// <param name="start">The event's name.</param>
    /// <param name="step">Done before each look, such as a step of the clock.</param>
    public Task WaitForAsync(string start, Action? step = null) =>
        Wait.UntilAsync(() => Task.FromResult(_lines.Any(line => line.StartsWith(start, StringComparison.Ordinal))), step);

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        _lines.Enqueue(formatter(state, exception));
}
