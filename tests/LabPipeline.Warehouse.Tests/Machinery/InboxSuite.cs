using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Tests.Machinery;

/// <summary>A message takes effect once for each consumer, however often and wherever it arrives.</summary>
public abstract class InboxSuite(DialectName store)
{
    private const string Consumer = "quality-file-refused";
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 8, 0, 0, TimeSpan.Zero);
    private static readonly Guid Message = new("00000000-0000-0000-0000-000000000001");

    [Fact]
    public async Task Inbox_WhenAMessageComesTwice_LetsItInOnce()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        Assert.True(await EnterAsync(scratch.Warehouse, Consumer));
        Assert.False(await EnterAsync(scratch.Warehouse, Consumer));
        Assert.True(await EnterAsync(scratch.Warehouse, "notifier-file-refused"));
    }

    [Fact]
    [Shows(46)]
    public async Task Inbox_WhenSeveralProcessesGetTheMessage_LetsOneIn()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var processes = Enumerable.Range(0, 4).Select(_ => new LabWarehouse(scratch.Warehouse.Dialect, scratch.Time)).ToList();

        var entered = await Task.WhenAll(processes.SelectMany(process => Enumerable.Range(0, 4).Select(_ => Task.Run(() => EnterAsync(process, Consumer)))));

        Assert.Single(entered, true);
        processes.ForEach(process => process.Dispose());
    }

    private static Task<bool> EnterAsync(LabWarehouse warehouse, string consumer) => warehouse.WriteAsync(
        session => InboxStore.TryEnterAsync(session, Message, consumer, Now), TestContext.Current.CancellationToken);
}
