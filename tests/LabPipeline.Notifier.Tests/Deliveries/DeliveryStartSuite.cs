using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.Deliveries;

public abstract class DeliveryStartSuite(DialectName store)
{
    private static readonly AlertRow Alert = new(17);

    private readonly RecordingChannel _mail = new("email:lab-manager");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(61)]
    public async Task Start_WhenAKilledPredecessorHadClaimedAFirstAttempt_SendsItAtOnce()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.RaiseAsync(Alert);
        using var kill = new CancellationTokenSource();
        _mail.Answer = async (_, _) =>
        {
            await kill.CancelAsync();
            throw new OperationCanceledException(kill.Token);
        };
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => desk.Worker.DeliverDueAsync(kill.Token));
        var sentAgain = new TaskCompletionSource();
        _mail.Answer = (_, _) =>
        {
            sentAgain.TrySetResult();
            return Task.FromResult(SendOutcome.Sent);
        };
        using var restarted = desk.NewWorker();

        await restarted.StartAsync(Stop);

        await sentAgain.Task.WaitAsync(TimeSpan.FromSeconds(20), Stop);
        await restarted.StopAsync(Stop);
    }
}
