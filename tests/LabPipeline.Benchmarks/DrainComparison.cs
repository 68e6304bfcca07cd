using System.Diagnostics;
using System.Globalization;
using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Testing.Broker;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using MassTransit;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Benchmarks;

/// <summary>How fast the relay empties the outbox into a private RabbitMQ node, against the bus library publishing the same messages to the same queues.</summary>
internal static class DrainComparison
{
    private const int InFlight = 200;
    private const string PasswordVariable = "LABPIPELINE_BENCH_BROKER_PASSWORD";

    public static async Task<IReadOnlyList<Goal>> RunAsync(string[] args)
    {
        if (RabbitBroker.Missing is { } reason)
        {
            throw new InvalidOperationException($"Not measured: {reason}.");
        }

        var (messages, rounds) = (Figures.Number(args, 0, 5000), Figures.Number(args, 1, 5));
        var folder = Directory.CreateTempSubdirectory("labpipeline-drain-").FullName;
        await using var broker = await RabbitBroker.StartAsync();
        Environment.SetEnvironmentVariable(PasswordVariable, broker.Password);
        try
        {
            using var host = await StartRelayAsync(folder, broker);
            var plain = await StartPlainAsync(broker);
            var (ours, theirs) = (new List<double>(), new List<double>());
            for (var round = 0; round <= rounds; round++)
            {
                var published = await PublishAsync(plain, messages);
                var drained = await DrainAsync(host.Services, messages, round);
                Figures.Print($"round {round}: plain {messages / published:N0}/s, outbox {messages / drained:N0}/s{(round == 0 ? " (not counted)" : "")}");
                if (round > 0)
                {
                    theirs.Add(published);
                    ours.Add(drained);
                }
            }

            await plain.StopAsync();
            await host.StopAsync();
            Figures.Print($"{messages} messages, medians of {rounds} interleaved rounds, {InFlight} in flight on both sides, quorum queue, publisher confirms");
            Figures.Print($"outbox drained {messages / Figures.Median(ours):N0}/s, plain publishing {messages / Figures.Median(theirs):N0}/s");
            return [new("outbox drained, against plain publishing", Figures.Median(theirs) / Figures.Median(ours), 0.6)];
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<IHost> StartRelayAsync(string folder, RabbitBroker broker)
    {
        var builder = Host.CreateApplicationBuilder();
        builder.Configuration.AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["Lab:DataFolder"] = folder,
            ["Lab:Bus"] = BusNames.RabbitMq,
            ["Lab:Rabbit:Host"] = broker.Host,
            ["Lab:Rabbit:Port"] = broker.Port.ToString(CultureInfo.InvariantCulture),
            ["Lab:Rabbit:VirtualHost"] = broker.VirtualHost,
            ["Lab:Rabbit:User"] = broker.User,
            ["Lab:Rabbit:PasswordVariable"] = PasswordVariable,
        });
        LabHost.Compose(builder);
        var host = builder.Build();
        await LabHost.PrepareAsync(host.Services, CancellationToken.None);
        await host.StartAsync();
        await host.Services.GetRequiredService<LabBusHost>().WaitUntilUpAsync(CancellationToken.None);
        return host;
    }

    /// <summary>The library's own way to the queues that the relay's process has declared.</summary>
    private static async Task<IBusControl> StartPlainAsync(RabbitBroker broker)
    {
        var bus = Bus.Factory.CreateUsingRabbitMq(configure => configure.Host(broker.Host, (ushort)broker.Port, broker.VirtualHost, host =>
        {
            host.Username(broker.User);
            host.Password(broker.Password);
        }));
        await bus.StartAsync();
        return bus;
    }

    private static async Task<double> PublishAsync(IBusControl bus, int messages)
    {
        var watch = Stopwatch.StartNew();
        foreach (var window in Enumerable.Range(0, messages).Chunk(InFlight))
        {
            await Task.WhenAll(window.Select(number => bus.Publish(MessageOf(number))));
        }

        return watch.Elapsed.TotalSeconds;
    }

    private static async Task<double> DrainAsync(IServiceProvider services, int messages, int round)
    {
        var warehouse = services.GetRequiredService<LabWarehouse>();
        await warehouse.WriteAsync(
            async session =>
            {
                for (var number = 0; number < messages; number++)
                {
                    await OutboxStore.AddAsync(session, MessageOf(number), FormattableString.Invariant($"{round}|{number}"), TimeProvider.System.GetUtcNow());
                }
            },
            CancellationToken.None);
        var watch = Stopwatch.StartNew();
        services.GetRequiredService<RelaySignal>().Wake();
        while (await warehouse.ReadAsync(OutboxStore.CountUnpublishedAsync, CancellationToken.None) > 0)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(10));
        }

        return watch.Elapsed.TotalSeconds;
    }

    private static ReadingsRecorded MessageOf(int number) => new(number, 1, 1, [.. Enumerable.Range(0, 20).Select(SugarFile.BarcodeOf)], 50, 0);
}
