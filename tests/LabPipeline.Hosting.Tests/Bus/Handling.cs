using LabPipeline.Contracts.V1;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>What the test's consumer does with a message, shared by all consumers of one laboratory.</summary>
internal sealed class Handling
{
    private int _tries;

    /// <summary>Runs before the transaction.</summary>
    public Action<FileRefused> OnArrival { get; set; } = _ => { };

    /// <summary>Runs inside the transaction; throwing means failure.</summary>
    public Func<FileRefused, Task> OnMessage { get; set; } = _ => Task.CompletedTask;

    public int Tries => Volatile.Read(ref _tries);

    public Task HandleAsync(FileRefused message)
    {
        Interlocked.Increment(ref _tries);
        return OnMessage(message);
    }
}
