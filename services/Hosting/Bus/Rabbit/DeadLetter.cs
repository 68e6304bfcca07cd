using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using LabPipeline.Warehouse.Machinery;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>Reads what can be read of a message the broker gave up on: it may be anything, so nothing is taken for granted.</summary>
internal static class DeadLetter
{
    private const string FirstQueue = "x-first-death-queue";
    private const string FirstReason = "x-first-death-reason";
    private const string TypePrefix = "urn:message:";

    public static ParkedMessage Read(IReadOnlyBasicProperties properties, ReadOnlyMemory<byte> body, DateTimeOffset now)
    {
        var text = Encoding.UTF8.GetString(body.Span);
        var (type, message) = Open(text);
        return new ParkedMessage
        {
            MessageId = Guid.TryParse(properties.MessageId, out var id) ? id : new Guid(SHA256.HashData(body.Span).AsSpan(0, 16)),
            Endpoint = HeaderOf(properties, FirstQueue) ?? RabbitTopology.DeadLetters,
            Type = type ?? ParkedMessage.UnknownType,
            Body = message ?? text,
            Reason = ReasonOf(HeaderOf(properties, FirstReason)),
            ParkedAt = now,
        };
    }

    private static string ReasonOf(string? reason) => reason switch
    {
        "delivery_limit" => $"The broker gave up after {RabbitTopology.DeliveryLimit} deliveries: the process ended or the message could not be read each time.",
        null => "The broker gave up on it and did not say why.",
        _ => $"The broker gave up on it: {reason}.",
    };

    /// <summary>Type and message inside the bus's envelope, or nulls when it is no such envelope.</summary>
    private static (string? Type, string? Message) Open(string text)
    {
        try
        {
            using var envelope = JsonDocument.Parse(text);
            var types = envelope.RootElement.GetProperty("messageType").EnumerateArray().Select(type => type.GetString()!);
            var type = types.First(name => name.StartsWith(TypePrefix, StringComparison.Ordinal))[TypePrefix.Length..].Replace(':', '.');
            var message = MessageTypes.Find(type) is { } contract ? envelope.RootElement.GetProperty("message").Deserialize(contract, FromBus) : null;
            return message is null ? (null, null) : (type, JsonSerializer.Serialize(message, message.GetType()));
        }
        catch (Exception exception) when (exception is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return (null, null);
        }
    }

    private static readonly JsonSerializerOptions FromBus = new(JsonSerializerDefaults.Web);

    private static string? HeaderOf(IReadOnlyBasicProperties properties, string name) =>
        properties.Headers?.TryGetValue(name, out var value) == true ? value switch
        {
            byte[] bytes => Encoding.UTF8.GetString(bytes),
            string text => text,
            _ => null,
        }
        : null;
}
