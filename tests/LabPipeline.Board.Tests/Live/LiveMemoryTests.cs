using LabPipeline.Board.Live;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Board.Tests.Live;

public sealed class LiveMemoryTests : IAsyncLifetime
{
    private readonly FakeTimeProvider _time = new(RunningBoard.Now);
    private ScratchWarehouse _scratch = null!;
    private LivePosition _position = null!;
    private LiveMemory _memory = null!;
    private int _reads;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _scratch = await ScratchWarehouse.CreateAsync(DialectName.Sqlite, _time);
        _position = new LivePosition(_scratch.Warehouse, _time);
        _memory = new LiveMemory(_scratch.Warehouse, _position);
    }

    public async ValueTask DisposeAsync()
    {
        _position.Dispose();
        await _scratch.DisposeAsync();
    }

    [Fact]
    public async Task Question_AskedByMany_IsAnsweredOnceUntilSomethingChanges()
    {
        await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => AskAsync("a")));
        await AskAsync("b");
        Assert.Equal(2, _reads);

        _time.Advance(TimeSpan.FromSeconds(10));
        await AskAsync("a");
        Assert.Equal(2, _reads);

        await ChangeAsync();
        _time.Advance(TimeSpan.FromSeconds(1));
        await AskAsync("a");
        Assert.Equal(3, _reads);
    }

    [Fact]
    public async Task Answer_AfterAForm_IsANewOne()
    {
        await AskAsync("a");
        await ChangeAsync();

        _position.Forget();
        await AskAsync("a");

        Assert.Equal(2, _reads);
    }

    [Fact]
    public async Task Question_ThatCouldNotBeAnswered_IsTriedAgain()
    {
        await Assert.ThrowsAsync<IOException>(() => _memory.AskAsync<string>("a", _ => throw new IOException("gone"), Token));

        Assert.Equal("read", await AskAsync("a"));
    }

    /// <summary>Whoever asked first closes the browser; who asked second still gets the answer.</summary>
    [Fact]
    public async Task Answer_WhenTheFirstToAskLeaves_IsThereForTheSecond()
    {
        using var leaving = new CancellationTokenSource();
        var gate = new TaskCompletionSource();
        var first = _memory.AskAsync("a", async _ => { await gate.Task; return "read"; }, leaving.Token);
        await leaving.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);

        var second = AskAsync("a");
        gate.SetResult();

        Assert.Equal("read", await second);
        Assert.Equal(0, _reads);
    }

    private Task<string> AskAsync(string key) => _memory.AskAsync(
        key,
        _ =>
        {
            Interlocked.Increment(ref _reads);
            return Task.FromResult("read");
        },
        Token);

    private Task ChangeAsync() => _scratch.Warehouse.WriteAsync(
        session => ChangeLogStore.AddAsync(session, new Change { At = _time.GetUtcNow(), Who = "test", What = "changed", Subject = "x", Why = "test" }), Token);
}
