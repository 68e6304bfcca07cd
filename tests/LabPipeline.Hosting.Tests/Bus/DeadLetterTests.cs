using System.Text;
using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Warehouse.Machinery;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>A dead letter may be anything; what it is not known to be is not guessed.</summary>
public sealed class DeadLetterTests
{
    private const string Envelope =
        """
        { "messageType": ["urn:message:LabPipeline.Contracts.V1:FileRefused"], "message": { "fileId": 7, "name": "a.csv", "reasonCode": "number" } }
        """;

    private static readonly DateTimeOffset Now = new(2026, 1, 14, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Read_WhenItIsOneOfOurs_GivesTypeMessageQueueAndReason()
    {
        var id = Guid.Parse("0123abcd-0000-4000-8000-000000000001");
        var properties = new BasicProperties
        {
            MessageId = id.ToString(),
            Headers = new Dictionary<string, object?> { ["x-first-death-queue"] = "quality-file-refused"u8.ToArray(), ["x-first-death-reason"] = "delivery_limit"u8.ToArray() },
        };

        var parked = DeadLetter.Read(properties, Encoding.UTF8.GetBytes(Envelope), Now);

        Assert.Equal((id, "quality-file-refused", "LabPipeline.Contracts.V1.FileRefused"), (parked.MessageId, parked.Endpoint, parked.Type));
        Assert.Equal("""{"FileId":7,"Name":"a.csv","ReasonCode":"number"}""", parked.Body);
        Assert.StartsWith("The broker gave up after 20 deliveries", parked.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("not JSON")]
    [InlineData("[]")]
    [InlineData("""{ "messageType": [] }""")]
    [InlineData("""{ "messageType": ["urn:message:Somewhere:Else"], "message": {} }""")]
    [InlineData("""{ "messageType": ["urn:message:LabPipeline.Contracts.V1:FileRefused"] }""")]
    [InlineData("""{ "messageType": ["urn:message:LabPipeline.Contracts.V1:FileRefused"], "message": { "fileId": "x" } }""")]
    public void Read_WhenItIsAnythingElse_KeepsItAsItCame(string text)
    {
        var parked = DeadLetter.Read(new BasicProperties(), Encoding.UTF8.GetBytes(text), Now);

        Assert.Equal((ParkedMessage.UnknownType, text, RabbitTopology.DeadLetters), (parked.Type, parked.Body, parked.Endpoint));
        Assert.Equal(parked.MessageId, DeadLetter.Read(new BasicProperties(), Encoding.UTF8.GetBytes(text), Now).MessageId);
    }
}
