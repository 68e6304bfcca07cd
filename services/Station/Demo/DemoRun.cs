using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.DependencyInjection;

namespace LabPipeline.Station.Demo;

/// <summary>Runs the whole pipeline over the demonstration season until nothing is left to do.</summary>
/// <remarks>Interrupted at any moment, the next run goes on from where the warehouse stands.</remarks>
public sealed class DemoRun(LabOptions lab)
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(200);

    // A file of a season long past is held for good reasons; the demonstration does not wait a quarter of an hour to say so.
    private static readonly KeyValuePair<string, string?>[] Settings =
    [
        new($"{RuleLimits.Section}:{nameof(RuleLimits.HeldFileMinutes)}", "0"),
    ];

    /// <param name="scenario">The season.</param>
    /// <param name="progress">Told how many files of how many are settled.</param>
    /// <param name="cancellationToken">Stops the run.</param>
    public async Task RunAsync(DemoScenario scenario, Action<int, int> progress, CancellationToken cancellationToken)
    {
        using var host = StationHost.Build(lab.DataFolder, Settings);
        await LabHost.PrepareAsync(host.Services, cancellationToken);
        var warehouse = host.Services.GetRequiredService<LabWarehouse>();
        await warehouse.WriteAsync(
            session => DemoPreparation.PrepareAsync(session, scenario, host.Services.GetRequiredService<TimeProvider>().GetUtcNow()),
            cancellationToken);
        await host.StartAsync(cancellationToken);
        try
        {
            await UntilAsync(() => IsReadAsync(host.Services, scenario, progress, cancellationToken), cancellationToken);
            await host.Services.GetRequiredService<PullWatch>().LookAsync(cancellationToken);
            await UntilAsync(() => IsToldAsync(host.Services, cancellationToken), cancellationToken);
        }
        finally
        {
            await host.StopAsync(CancellationToken.None);
        }
    }

    private static async Task UntilAsync(Func<Task<bool>> settled, CancellationToken cancellationToken)
    {
        while (!await settled())
        {
            await Task.Delay(LookEvery, cancellationToken);
        }
    }

    /// <summary>Every file is taken or held, and every reading judged.</summary>
    private static Task<bool> IsReadAsync(
        IServiceProvider services, DemoScenario scenario, Action<int, int> progress, CancellationToken cancellationToken) =>
        services.GetRequiredService<LabWarehouse>().ReadAsync(
            async session =>
            {
                progress(await DemoProgressStore.CountSettledAsync(session), scenario.Files.Count);
                var beats = await HeartbeatStore.ListAsync(session);
                var intakes = beats.Where(beat => beat.Service.StartsWith("intake-", StringComparison.Ordinal)).ToList();
                return intakes.Count > 0 && intakes.All(beat => beat.CaughtUpAt is not null) && await UnhandledAsync(services, session) == 0;
            },
            cancellationToken);

    /// <summary>Every alert has gone out on every channel that wants it.</summary>
    private static Task<bool> IsToldAsync(IServiceProvider services, CancellationToken cancellationToken) =>
        services.GetRequiredService<LabWarehouse>().ReadAsync(
            async session => await UnhandledAsync(services, session) == 0 && await DemoProgressStore.CountPendingDeliveriesAsync(session) == 0,
            cancellationToken);

    private static async Task<int> UnhandledAsync(IServiceProvider services, WarehouseSession session)
    {
        var unhandled = 0;
        foreach (var consumer in services.GetRequiredService<ConsumerCatalogue>().Entries)
        {
            unhandled += await OutboxStore.CountUnhandledAsync(session, consumer.MessageType, consumer.ConsumerName);
        }

        return unhandled;
    }
}
