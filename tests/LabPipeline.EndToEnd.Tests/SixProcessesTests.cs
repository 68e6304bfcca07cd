using System.Diagnostics;
using System.Globalization;
using LabPipeline.Hosting;
using LabPipeline.Station;
using LabPipeline.Station.Demo;
using LabPipeline.Testing;
using LabPipeline.Testing.Broker;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>The season as a larger laboratory runs it: each service a process, a broker between them, one warehouse.</summary>
public sealed class SixProcessesTests(ITestOutputHelper output)
{
    private const string PasswordVariable = "LABPIPELINE_TEST_BROKER_PASSWORD";

    // The watch looks once a minute and may find intake still busy the first time.
    private static readonly TimeSpan LongestRun = TimeSpan.FromMinutes(8);

    private static readonly TimeSpan BrokerAway = TimeSpan.FromSeconds(10);

    private static readonly string[] Services = ["SugarIntake", "BalanceIntake", "ColourIntake", "BenchIntake", "Notifier", "Quality"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(45)]
    public async Task Season_WhenEachServiceIsAProcessAndTheBrokerIsAwayForAWhile_EndsRowForRowAsInOne()
    {
        if (RabbitBroker.Missing is { } reason)
        {
            Assert.Skip(Requirement.Waive(Requirement.RabbitMq, reason));
        }

        using var one = new ScratchFolder();
        using var six = new ScratchFolder();
        await using var broker = await RabbitBroker.StartAsync();
        using (var station = ProductProcess.Start("Station", "demo", "--data", one.Path))
        {
            var (exitCode, _, errors) = await station.FinishAsync(Stop);
            Assert.True(exitCode == 0, errors);
        }

        await SetUpAsync(six);
        var processes = Services.Select(service => ProductProcess.Start(service, Arguments(broker, six))).ToList();
        try
        {
            await TakeBrokerAwayAsync(broker, six.Path);
            Assert.Empty(await DifferencesAtLastAsync(await WarehouseContents.ReadAsync(one.Path), six.Path, processes));
            foreach (var process in processes)
            {
                Assert.Equal(0, await process.StopAsync(Stop));
            }
        }
        finally
        {
            processes.ForEach(process => process.Dispose());
        }
    }

    /// <summary>The same files, profiles and plan as the demonstration's, and nothing running yet.</summary>
    private static async Task SetUpAsync(ScratchFolder folder)
    {
        var lab = new LabOptions { DataFolder = folder.Path };
        var scenario = DemoScenario.Create();
        new DemoWriter(lab).Write(scenario);
        using var warehouse = await StationWarehouse.CreateAsync(lab, Stop);
        await warehouse.WriteAsync(session => DemoPreparation.PrepareAsync(session, scenario, DateTimeOffset.UtcNow), Stop);
    }

    private static IEnumerable<string> Arguments(RabbitBroker broker, ScratchFolder folder)
    {
        // Inherited by the processes; a command line can be read by everybody on the machine.
        Environment.SetEnvironmentVariable(PasswordVariable, broker.Password);
        return new Dictionary<string, string>
        {
            ["Lab:DataFolder"] = folder.Path,
            ["Lab:Bus"] = "rabbitmq",
            ["Lab:Rabbit:Host"] = broker.Host,
            ["Lab:Rabbit:Port"] = broker.Port.ToString(CultureInfo.InvariantCulture),
            ["Lab:Rabbit:VirtualHost"] = broker.VirtualHost,
            ["Lab:Rabbit:User"] = broker.User,
            ["Lab:Rabbit:PasswordVariable"] = PasswordVariable,

            // As in the demonstration: its files are of a season long past.
            ["Quality:HeldFileMinutes"] = "0",
        }.Select(setting => $"--{setting.Key}={setting.Value}");
    }

    /// <summary>Stops the broker as its service manager does as soon as messages have been handled, and starts it again.</summary>
    private async Task TakeBrokerAwayAsync(RabbitBroker broker, string folder)
    {
        if (broker.Node is not { } node)
        {
            output.WriteLine("The broker belongs to somebody else: it stays.");
            return;
        }

        var watch = Stopwatch.StartNew();
        while ((await WarehouseContents.ReadAsync(folder))["alerts"].Count == 0 && watch.Elapsed < LongestRun)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(200), Stop);
        }

        await node.StopAsync();
        var stored = (await WarehouseContents.ReadAsync(folder))["readings"].Count;
        await Task.Delay(BrokerAway, Stop);
        var grown = (await WarehouseContents.ReadAsync(folder))["readings"].Count;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Without the broker readings grew from {stored} to {grown}."));
        await node.StartAsync();
    }

    private async Task<IReadOnlyList<string>> DifferencesAtLastAsync(
        IReadOnlyDictionary<string, IReadOnlyList<string>> expected, string folder, IReadOnlyList<ProductProcess> processes)
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            var differences = WarehouseContents.Differences(expected, await WarehouseContents.ReadAsync(folder));
            if (differences.Count == 0 || watch.Elapsed > LongestRun)
            {
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{watch.Elapsed.TotalSeconds:0} s; {string.Join(", ", expected.Select(table => $"{table.Value.Count} {table.Key}"))}"));
                return differences;
            }

            Assert.All(processes, process => Assert.False(process.HasExited));
            await Task.Delay(TimeSpan.FromSeconds(3), Stop);
        }
    }
}
