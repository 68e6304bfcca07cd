using System.Diagnostics;
using Dapper;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>What every bus promises; a set-up is one line below.</summary>
public abstract class BusBehaviour
{
    private const int Poison = 7;

    // Those who wait for the pen and the bus have 3 and 5 s; the host itself would give up after 30 s.
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(25);

    private protected static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(45)]
    public async Task Messages_WhenCommitted_EachHaveTheirEffectOnce()
    {
        await using var lab = await StartAsync();

        await lab.SendAsync(500);
        await lab.AllHandledAsync();

        await lab.AssertEachOnceAsync();
        Assert.Equal(0, await lab.UnpublishedAsync());
        Assert.Empty(await lab.ParkedAsync());
    }

    [Fact]
    [Shows(30)]
    public async Task Messages_WhenPublishedTwice_HaveTheirEffectOnce()
    {
        await using var lab = await StartAsync();
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        await lab.Warehouse.WriteAsync(session => session.Connection.ExecuteAsync("update outbox set published_at = null", transaction: session.Transaction), Stop);
        await lab.UntilAsync(async () => await lab.UnpublishedAsync() == 0, "published again");
        await lab.SendAsync(1);
        await lab.AllHandledAsync();

        await lab.AssertEachOnceAsync();
    }

    [Fact]
    public async Task Message_WhenItFailsForAWhile_IsTriedAgainAndNotParked()
    {
        await using var lab = await StartAsync();
        lab.Handling.OnMessage = _ => lab.Handling.Tries <= 3 ? throw new InvalidOperationException("a passing fault") : Task.CompletedTask;

        await lab.SendAsync(1);
        await lab.AllHandledAsync();

        await lab.AssertEachOnceAsync();
        Assert.Equal(4, lab.Handling.Tries);
        Assert.Empty(await lab.ParkedAsync());
    }

    [Fact]
    [Shows(34)]
    public async Task Message_WhenItKeepsFailing_IsParkedWithItsReasonAndTheOthersGoOn()
    {
        await using var lab = await StartAsync();
        lab.Handling.OnMessage = message => message.FileId == Poison ? throw new InvalidOperationException("file 7 cannot be judged") : Task.CompletedTask;

        await lab.SendAsync(20);
        await lab.UntilAsync(async () => (await lab.ParkedAsync()).Count == 1 && (await lab.EffectsAsync()).Count == 19, "one parked, the others handled");

        var parked = Assert.Single(await lab.ParkedAsync());
        Assert.Equal(NotingConsumer.Endpoint, parked.Endpoint);
        Assert.Equal("LabPipeline.Contracts.V1.FileRefused", parked.Type);
        Assert.Equal("InvalidOperationException: file 7 cannot be judged", parked.Reason);
        Assert.Contains("\"FileId\":7", parked.Body, StringComparison.Ordinal);
        Assert.DoesNotContain(Poison, await lab.EffectsAsync());
        Assert.Equal(0, await lab.Warehouse.ReadAsync(session => OutboxStore.CountUnhandledAsync(session, parked.Type, parked.Endpoint), Stop));
    }

    [Fact]
    [Shows(34, 37)]
    public async Task ParkedMessage_WhenReplayed_IsHandledOnceOrParkedAgain()
    {
        await using var lab = await StartAsync();
        lab.Handling.OnMessage = _ => throw new InvalidOperationException("not yet");
        await lab.SendAsync(1);
        await lab.UntilAsync(async () => (await lab.ParkedAsync()).Count == 1, "parked");

        await lab.ReplayAsync((await lab.ParkedAsync())[0]);
        await lab.UntilAsync(async () => (await lab.ParkedAsync()) is [{ TimesParked: 2 }], "parked again");
        lab.Handling.OnMessage = _ => Task.CompletedTask;
        await lab.ReplayAsync((await lab.ParkedAsync())[0]);
        await lab.AllHandledAsync();

        await lab.AssertEachOnceAsync();
        Assert.Empty(await lab.ParkedAsync());
    }

    [Fact]
    public async Task Messages_WhenTheProcessStopsHalfWay_AreHandledByTheNext()
    {
        await using var lab = await StartAsync();
        lab.Handling.OnMessage = async message => await Task.Delay(message.FileId > 20 ? 50 : 0, Stop);
        await lab.SendAsync(200);
        await lab.UntilAsync(async () => (await lab.EffectsAsync()).Count >= 20, "some handled");

        await lab.StopAsync();
        lab.Handling.OnMessage = _ => Task.CompletedTask;
        await lab.StartAsync();
        await lab.AllHandledAsync();

        await lab.AssertEachOnceAsync();
        Assert.Empty(await lab.ParkedAsync());
    }

    [Fact]
    public async Task Message_WhenTheWarehouseTakesNothing_IsKeptInHandAndNotParked()
    {
        await using var lab = await StartAsync();
        await lab.Warehouse.WriteAsync(
            session => session.Connection.ExecuteAsync(
                """
                create trigger no_effect before insert on effect begin select raise(abort, 'warehouse out of order'); end;
                create trigger no_parking before insert on parked_message begin select raise(abort, 'warehouse out of order'); end;
                """,
                transaction: session.Transaction),
            Stop);
        await lab.SendAsync(1);
        await Task.Delay(TimeSpan.FromSeconds(2), Stop);

        await lab.Warehouse.WriteAsync(
            session => session.Connection.ExecuteAsync("drop trigger no_effect; drop trigger no_parking;", transaction: session.Transaction), Stop);
        await lab.AllHandledAsync();

        await lab.AssertEachOnceAsync();
        Assert.Empty(await lab.ParkedAsync());
    }

    [Fact]
    public async Task Stop_WhileAHandlerHangsWithTheWarehousesPen_EndsInBoundedTimeAndTheMessageIsHandledLater()
    {
        await using var lab = await StartAsync();
        var hang = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        lab.Handling.OnMessage = _ => hang.Task;
        await lab.SendAsync(20);
        await lab.UntilAsync(() => Task.FromResult(lab.Handling.Tries == 1), "one in hand");

        var watch = Stopwatch.StartNew();
        await lab.StopAsync();
        Assert.True(watch.Elapsed < LongestStop, $"Stopped after {watch.Elapsed.TotalSeconds:0} s.");
        Assert.Single(lab.LogLines("HandlerStillRuns"), line => line.Contains(NotingConsumer.Endpoint, StringComparison.Ordinal));

        // The end of the process would have taken the transaction with it.
        hang.SetException(new InvalidOperationException("the process ended"));
        lab.Handling.OnMessage = _ => Task.CompletedTask;
        await lab.StartAsync();
        await lab.AllHandledAsync();
        await lab.AssertEachOnceAsync();
        Assert.Empty(await lab.ParkedAsync());
    }

    private protected abstract Task<BusLab> StartAsync();
}
