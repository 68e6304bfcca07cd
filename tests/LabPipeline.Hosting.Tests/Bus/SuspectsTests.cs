using LabPipeline.Hosting.Bus;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>Messages that came back several times do not meet each other.</summary>
public sealed class SuspectsTests : IDisposable
{
    private readonly FakeTimeProvider _time = new();
    private readonly Suspects _suspects;
    private int _atOnce;
    private int _mostAtOnce;

    public SuspectsTests() => _suspects = new Suspects(new BusPatience(), _time);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _suspects.Dispose();

    [Fact]
    public async Task Messages_WhenTheyCameBackSeveralTimes_WaitAndAreHandledOneAtATime()
    {
        var handling = Enumerable.Range(0, 8).Select(_ => _suspects.HandleAsync(3, WorkAsync, Stop)).ToList();
        Assert.All(handling, task => Assert.False(task.IsCompleted));

        _time.Advance(new BusPatience().Suspicion);
        await Task.WhenAll(handling).WaitAsync(TimeSpan.FromSeconds(30), Stop);

        Assert.Equal(1, _mostAtOnce);
    }

    [Fact]
    public async Task Messages_WhenTheyCameBackOnceOrTwice_DoNotWait()
    {
        await Task.WhenAll(Enumerable.Range(0, 3).Select(returns => _suspects.HandleAsync(returns, WorkAsync, Stop))).WaitAsync(TimeSpan.FromSeconds(30), Stop);

        Assert.Equal(3, _mostAtOnce);
    }

    private async Task WorkAsync()
    {
        var atOnce = Interlocked.Increment(ref _atOnce);
        _mostAtOnce = Math.Max(_mostAtOnce, atOnce);
        await Task.Delay(20, Stop);
        Interlocked.Decrement(ref _atOnce);
    }
}
