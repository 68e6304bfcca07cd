using LabPipeline.Contracts.V1;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Tests.Machinery;

/// <summary>Messages exist exactly when their cause does, and none is forgotten or handled twice.</summary>
public abstract class OutboxSuite(DialectName store)
{
    private const string Consumer = "quality-file-refused";
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 8, 0, 0, TimeSpan.Zero);
    private static readonly FileRefused Message = new(7, "run1.csv", "intake.number-format");
    private static readonly string Type = typeof(FileRefused).FullName!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(29)]
    public async Task Message_WhenItsTransactionFails_DoesNotExist()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        await Assert.ThrowsAsync<InvalidOperationException>(() => scratch.Warehouse.WriteAsync(
            async session =>
            {
                await OutboxStore.AddAsync(session, Message, "a", Now);
                throw new InvalidOperationException("the cause failed");
            },
            Stop));

        Assert.Empty(await UnpublishedAsync(scratch));
    }

    [Fact]
    [Shows(48)]
    public async Task Message_WhenAddedTwiceForTheSameCause_StaysOneWithOneIdentifier()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await AddAsync(scratch, "a");
        await AddAsync(scratch, "a");
        await AddAsync(scratch, "b");

        var messages = await UnpublishedAsync(scratch);

        Assert.Equal(2, messages.Count);
        Assert.NotEqual(messages[0].MessageId, messages[1].MessageId);
    }

    [Fact]
    public async Task Message_WhenPublishedButForgottenByTheBus_GoesOutAgainUntilHandled()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await AddAsync(scratch, "a");
        var message = Assert.Single(await UnpublishedAsync(scratch));
        await scratch.Warehouse.WriteAsync(session => OutboxStore.MarkPublishedAsync(session, [message.Position], Now), Stop);
        Assert.Empty(await UnpublishedAsync(scratch));

        await scratch.Warehouse.WriteAsync(session => OutboxStore.ReopenUnhandledAsync(session, Type, Consumer), Stop);
        Assert.Equal(message.MessageId, Assert.Single(await UnpublishedAsync(scratch)).MessageId);

        Assert.True(await scratch.Warehouse.WriteAsync(session => InboxStore.TryEnterAsync(session, message.MessageId, Consumer, Now), Stop));
        await scratch.Warehouse.WriteAsync(session => OutboxStore.MarkPublishedAsync(session, [message.Position], Now), Stop);
        await scratch.Warehouse.WriteAsync(session => OutboxStore.ReopenUnhandledAsync(session, Type, Consumer), Stop);
        Assert.Empty(await UnpublishedAsync(scratch));
    }

    [Fact]
    public async Task Message_WhenNobodyHereConsumesItsType_IsLeftForTheProcessThatDoes()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await AddAsync(scratch, "a");

        var others = await scratch.Warehouse.ReadAsync(
            session => OutboxStore.ListUnpublishedAsync(session, [typeof(QcAlertRaised).FullName!], 100), Stop);

        Assert.Empty(others);
        Assert.Single(await UnpublishedAsync(scratch));
    }

    private static Task AddAsync(ScratchWarehouse scratch, string identity) =>
        scratch.Warehouse.WriteAsync(session => OutboxStore.AddAsync(session, Message, identity, Now), Stop);

    private static Task<IReadOnlyList<OutboxMessage>> UnpublishedAsync(ScratchWarehouse scratch) =>
        scratch.Warehouse.ReadAsync(session => OutboxStore.ListUnpublishedAsync(session, [Type], 100), Stop);
}
