using System.Diagnostics;

namespace LabPipeline.Testing;

/// <summary>Waits for what another thread does.</summary>
public static class Wait
{
    // For a machine busy with other tests; a wait that ends well takes milliseconds.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(50);

    /// <summary>Looks again and again until it is so.</summary>
    /// <param name="isSo">What is waited for.</param>
    /// <param name="step">Done before each look, such as a step of a clock that stands still by itself.</param>
    /// <exception cref="TimeoutException">It was not so for a minute.</exception>
    public static async Task UntilAsync(Func<Task<bool>> isSo, Action? step = null)
    {
        for (var waited = Stopwatch.StartNew(); waited.Elapsed < Patience;)
        {
            step?.Invoke();
            if (await isSo())
            {
                return;
            }

            await Task.Delay(LookEvery);
        }

        throw new TimeoutException("What the test waits for did not happen within a minute.");
    }
}
