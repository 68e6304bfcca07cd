using LabPipeline.Hosting.Settings;
using MassTransit;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>How to reach the broker, for the bus and for the probe beside it.</summary>
internal sealed class RabbitAddress(RabbitOptions options, BusPatience patience, string processName)
{
    private static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(10);

    // The broker closes a connection whose password is wrong; the settings were checked when the process started.
    private readonly Secret _password = SecretSource.Read(options.PasswordFile, options.PasswordVariable, out var fault)
        ?? throw new InvalidOperationException($"{RabbitOptions.Section}: {fault}");

    public void Configure(IRabbitMqBusFactoryConfigurator bus, string purpose, RabbitSockets sockets) =>
        bus.Host(options.Host, (ushort)options.EffectivePort, options.VirtualHost, NameOf(purpose), host =>
        {
            host.Username(options.User);
            host.Password(_password.Reveal());
            host.Heartbeat(Heartbeat);
            host.RequestedConnectionTimeout(patience.Answer);
            host.ContinuationTimeout(patience.Answer);
            if (options.Tls)
            {
                host.UseSsl(tls => tls.ServerName = options.EffectiveServerName);
            }

            host.OnRefreshConnectionFactory = factory =>
            {
                sockets.Adopt(factory);
                return Task.CompletedTask;
            };
        });

    public ConnectionFactory Factory(string purpose, RabbitSockets sockets)
    {
        var factory = new ConnectionFactory
        {
            HostName = options.Host,
            Port = options.EffectivePort,
            VirtualHost = options.VirtualHost,
            UserName = options.User,
            Password = _password.Reveal(),
            ClientProvidedName = NameOf(purpose),
            AutomaticRecoveryEnabled = false,
            TopologyRecoveryEnabled = false,
            RequestedHeartbeat = Heartbeat,
            RequestedConnectionTimeout = patience.Answer,
            ContinuationTimeout = patience.Answer,
        };
        if (options.Tls)
        {
            factory.Ssl = new SslOption(options.EffectiveServerName, enabled: true);
        }

        sockets.Adopt(factory);
        return factory;
    }

    private string NameOf(string purpose) => $"{processName} {purpose}";
}
