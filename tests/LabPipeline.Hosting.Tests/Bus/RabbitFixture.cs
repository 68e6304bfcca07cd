using System.Globalization;
using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing;
using LabPipeline.Testing.Broker;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>A private broker for the tests of one class or collection, emptied before each; they run one after the other, beside those of other brokers.</summary>
/// <remarks>A broker that was given instead belongs to one of them at a time.</remarks>
public sealed class RabbitFixture : IAsyncLifetime
{
    private const string PasswordVariable = "LABPIPELINE_TEST_BROKER_PASSWORD";

    private static readonly SemaphoreSlim GivenBroker = new(1, 1);

    private RabbitBroker? _broker;

    public int Port => _broker!.Port;

    public async ValueTask InitializeAsync()
    {
        if (RabbitBroker.Missing is null)
        {
            _broker = await RabbitBroker.StartAsync();
            if (_broker.Node is null)
            {
                await GivenBroker.WaitAsync();
            }

            Environment.SetEnvironmentVariable(PasswordVariable, _broker.Password);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_broker is null)
        {
            return;
        }

        if (_broker.Node is null)
        {
            GivenBroker.Release();
        }

        await _broker.DisposeAsync();
    }

    /// <summary>The settings of a process over an empty broker; skips the test where there is none.</summary>
    public async Task<IReadOnlyDictionary<string, string?>> SettingsAsync()
    {
        if (RabbitBroker.Missing is { } reason)
        {
            Assert.Skip(Requirement.Waive(Requirement.RabbitMq, reason));
        }

        await WithChannelAsync(EmptyAsync);
        return new Dictionary<string, string?>
        {
            ["Lab:Bus"] = BusNames.RabbitMq,
            ["Lab:Rabbit:Host"] = _broker!.Host,
            ["Lab:Rabbit:Port"] = _broker.Port.ToString(CultureInfo.InvariantCulture),
            ["Lab:Rabbit:VirtualHost"] = _broker.VirtualHost,
            ["Lab:Rabbit:User"] = _broker.User,
            ["Lab:Rabbit:PasswordVariable"] = PasswordVariable,
        };
    }

    /// <summary>The private node; skips the test where the broker is somebody else's and may not be stopped.</summary>
    public RabbitNode Node()
    {
        if (_broker is { Node: null } or null)
        {
            Assert.Skip(Requirement.Waive(Requirement.RabbitMq, RabbitBroker.Missing ?? "the broker given is not ours to stop"));
        }

        return _broker.Node;
    }

    /// <summary>Runs <paramref name="work"/> beside the laboratory; a publish ends when the broker has the message safely.</summary>
    public async Task WithChannelAsync(Func<IChannel, Task> work)
    {
        var factory = new ConnectionFactory { HostName = _broker!.Host, Port = _broker.Port, UserName = _broker.User, Password = _broker.Password, VirtualHost = _broker.VirtualHost };
        await using var connection = await factory.CreateConnectionAsync();
        await using var channel = await connection.CreateChannelAsync(new CreateChannelOptions(publisherConfirmationsEnabled: true, publisherConfirmationTrackingEnabled: true));
        await work(channel);
    }

    private static async Task EmptyAsync(IChannel channel)
    {
        foreach (var name in EndpointCatalogue.All.Select(endpoint => endpoint.Name).Append(RabbitTopology.DeadLetters))
        {
            await channel.QueueDeleteAsync(name);
            await channel.ExchangeDeleteAsync(name);
        }

        foreach (var endpoint in EndpointCatalogue.All)
        {
            await channel.ExchangeDeleteAsync(RabbitTopology.ExchangeOf(endpoint.Message));
        }
    }
}
