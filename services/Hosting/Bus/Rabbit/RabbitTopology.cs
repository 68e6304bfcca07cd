using RabbitMQ.Client;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>What stands on the broker: an exchange for each message type, a quorum queue for each endpoint, and one queue for what no endpoint could take.</summary>
/// <remarks>
/// Declaring is repeatable and every process does it. A queue keeps what it cannot hand over: after the delivery limit the broker moves the
/// message to the dead letters and forgets it only when it has arrived there, which needs a queue that refuses new messages when full.
/// </remarks>
internal static class RabbitTopology
{
    public const string DeadLetters = "lab-dead-letters";

    /// <summary>The limit that newer brokers have by themselves; the old ones have none.</summary>
    public const int DeliveryLimit = 20;

    // Newer brokers would drop a dead letter after 20 tries to park it; this is as good as no limit on all of them.
    private const int DeadLetterLimit = 1_000_000;

    /// <summary>Arguments of an endpoint's queue; a queue that exists with others is refused by the broker.</summary>
    public static IReadOnlyDictionary<string, object?> QueueArguments { get; } = new Dictionary<string, object?>
    {
        ["x-queue-type"] = "quorum",
        ["x-delivery-limit"] = DeliveryLimit,
        ["x-dead-letter-exchange"] = DeadLetters,
        ["x-dead-letter-strategy"] = "at-least-once",
        ["x-overflow"] = "reject-publish",
    };

    /// <summary>The exchange a message type is published to, as the client library names it.</summary>
    public static string ExchangeOf(Type message) => $"{message.Namespace}:{message.Name}";

    public static async Task DeclareAsync(IChannel channel, CancellationToken cancellationToken)
    {
        await channel.ExchangeDeclareAsync(DeadLetters, ExchangeType.Fanout, durable: true, cancellationToken: cancellationToken).ConfigureAwait(false);
        var ofDeadLetters = new Dictionary<string, object?> { ["x-queue-type"] = "quorum", ["x-delivery-limit"] = DeadLetterLimit };
        await DeclareQueueAsync(channel, DeadLetters, ofDeadLetters, DeadLetters, cancellationToken).ConfigureAwait(false);
        foreach (var endpoint in EndpointCatalogue.All)
        {
            var messages = ExchangeOf(endpoint.Message);
            await channel.ExchangeDeclareAsync(messages, ExchangeType.Fanout, durable: true, cancellationToken: cancellationToken).ConfigureAwait(false);
            await channel.ExchangeDeclareAsync(endpoint.Name, ExchangeType.Fanout, durable: true, cancellationToken: cancellationToken).ConfigureAwait(false);
            await DeclareQueueAsync(channel, endpoint.Name, QueueArguments, endpoint.Name, cancellationToken).ConfigureAwait(false);
            await channel.ExchangeBindAsync(endpoint.Name, messages, "", cancellationToken: cancellationToken).ConfigureAwait(false);
        }
    }

    private static async Task DeclareQueueAsync(
        IChannel channel, string name, IReadOnlyDictionary<string, object?> arguments, string exchange, CancellationToken cancellationToken)
    {
        await channel.QueueDeclareAsync(
            name, durable: true, exclusive: false, autoDelete: false, new Dictionary<string, object?>(arguments), cancellationToken: cancellationToken)
            .ConfigureAwait(false);
        await channel.QueueBindAsync(name, exchange, "", cancellationToken: cancellationToken).ConfigureAwait(false);
    }
}
