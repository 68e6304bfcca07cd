using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Tests.Doubles;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Notifier.Tests.Channels;

public sealed class WebhookChannelTests
{
    private const string Host = "hooks.lab.example";

    // Reserved for a service no machine offers any more.
    private const int PortOfNobody = 1;

    private static readonly byte[] Key = [.. Enumerable.Range(1, 32).Select(number => (byte)number)];
    private static readonly FakeTimeProvider Time = new(NotifierDesk.Start);

    [Fact]
    public async Task Send_WhenTaken_IsSignedAsTheSpecificationSays()
    {
        // Standard Webhooks: three headers; v1 = base64(HMAC-SHA256(key, id.timestamp.body)), computed here by itself.
        await using var target = new WebhookTarget("204 No Content");

        var outcome = await SendAsync(target);

        Assert.Equal(SendOutcome.Sent, outcome);
        var request = Assert.Single(target.Requests);
        var id = request.Headers["webhook-id"];
        var timestamp = request.Headers["webhook-timestamp"];
        using var hmac = new HMACSHA256(Key);
        var expected = hmac.ComputeHash(Encoding.UTF8.GetBytes($"{id}.{timestamp}.{Encoding.UTF8.GetString(request.Body)}"));
        Assert.Equal("v1," + Convert.ToBase64String(expected), request.Headers["webhook-signature"]);
        Assert.Equal(NotifierDesk.Start.ToUnixTimeSeconds(), long.Parse(timestamp, CultureInfo.InvariantCulture));
        Assert.Equal("msg_" + Samples.Alert.Id, id);
        Assert.Equal("POST /alerts?room=2 HTTP/1.1", request.RequestLine);
        using var json = JsonDocument.Parse(request.Body);
        Assert.Equal("alert.raised", json.RootElement.GetProperty("type").GetString());
    }

    [Theory]
    [InlineData("200 OK", SendResult.Sent)]
    [InlineData("301 Moved", SendResult.TryLater)]
    [InlineData("400 Bad Request", SendResult.TryLater)]
    [InlineData("404 Not Found", SendResult.TryLater)]
    [InlineData("410 Gone", SendResult.Gone)]
    [InlineData("429 Too Many Requests", SendResult.TryLater)]
    [InlineData("500 Oops", SendResult.TryLater)]
    [InlineData("503 Busy", SendResult.TryLater)]
    public async Task Send_WhenAnswered_OnlyTwoHundredsCountAsTaken(string status, SendResult expected)
    {
        await using var target = new WebhookTarget(status);

        Assert.Equal(expected, (await SendAsync(target)).Result);
    }

    [Theory]
    [InlineData("Retry-After: 120")]
    [InlineData("Retry-After: Wed, 14 Jan 2026 09:02:00 GMT")]
    public async Task Send_WhenAskedToWait_PassesTheWaitOn(string header)
    {
        // RFC 9110, 10.2.3: seconds or a date.
        await using var target = new WebhookTarget($"429 Too Many Requests\r\n{header}");

        Assert.Equal(TimeSpan.FromMinutes(2), (await SendAsync(target)).RetryAfter);
    }

    [Fact]
    [Shows(66)]
    public async Task Send_WhenRedirectedInside_DoesNotFollow()
    {
        await using var inside = new WebhookTarget("200 OK");
        await using var target = new WebhookTarget($"302 Found\r\nLocation: http://127.0.0.1:{inside.Port}/latest/meta-data/");

        Assert.Equal(SendResult.TryLater, (await SendAsync(target)).Result);
        Assert.Equal(0, inside.Connections);
    }

    [Fact]
    public async Task Send_WhenTheLineIsReset_TriesLater()
    {
        await using var target = new WebhookTarget("reset");

        Assert.Equal(SendResult.TryLater, (await SendAsync(target)).Result);
    }

    [Fact]
    public async Task Send_WhenNobodyListens_TriesLater()
    {
        var outcome = await SendAsync(PortOfNobody);

        Assert.Equal(SendResult.TryLater, outcome.Result);
        Assert.StartsWith($"{Host}: ", outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(65)]
    public async Task Send_WhenTheTargetHangs_EndsWithItsTimeLimit()
    {
        await using var target = new WebhookTarget("hang");
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromMilliseconds(300));

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => SendAsync(target, stop: limit.Token));
    }

    [Fact]
    public async Task Send_WhenTheAnswerNeverEnds_DoesNotReadIt()
    {
        await using var target = new WebhookTarget("drip");

        Assert.Equal(SendResult.Sent, (await SendAsync(target)).Result);
    }

    [Fact]
    public async Task Send_WhenTheNameLeadsInside_NeverConnects()
    {
        await using var target = new WebhookTarget("200 OK");

        var outcome = await SendAsync(target, new FixedResolver(["127.0.0.1"]), []);

        Assert.Equal(SendResult.TryLater, outcome.Result);
        Assert.Contains("resolves to 127.0.0.1, which is not a public address", outcome.Reason, StringComparison.Ordinal);
        Assert.Equal(0, target.Connections);
    }

    [Fact]
    public async Task Send_WhenOneOfSeveralAddressesIsInside_NeverConnects()
    {
        await using var target = new WebhookTarget("200 OK");

        var outcome = await SendAsync(target, new FixedResolver(["8.8.8.8", "169.254.169.254"]), []);

        Assert.Contains("169.254.169.254", outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(66)]
    public async Task Send_WhenTheNameChangesBetweenCheckAndUse_ConnectsToWhatWasChecked()
    {
        // DNS rebinding: a second question would lead to 127.0.0.2, where nothing listens; it is never asked.
        await using var target = new WebhookTarget("200 OK");
        var resolver = new FixedResolver(["127.0.0.1"], ["127.0.0.2"]);

        var outcome = await SendAsync(target, resolver, [IPNetwork.Parse("127.0.0.1/32")]);

        Assert.Equal(SendResult.Sent, outcome.Result);
        Assert.Equal(1, resolver.Asked);
    }

    [Fact]
    public async Task Send_WhenTheHostIsNotListed_NeverAsksForIt()
    {
        var resolver = new FixedResolver(["8.8.8.8"]);
        using var http = new GuardedConnection(new HashSet<string> { Host }, new AddressGuard([]), resolver).CreateClient();
        var channel = new WebhookChannel(RecordingChannel.PolicyOf("webhook:x"), new Uri("http://other.example/"), Key, http, Time);

        var outcome = await channel.SendAsync([Samples.Alert], TestContext.Current.CancellationToken);

        Assert.Contains("'other.example' is not in Notifier:WebhookHosts", outcome.Reason, StringComparison.Ordinal);
        Assert.Equal(0, resolver.Asked);
    }

    private static Task<SendOutcome> SendAsync(
        WebhookTarget target, IHostResolver? resolver = null, IReadOnlyCollection<IPNetwork>? networks = null, CancellationToken? stop = null) =>
        SendAsync(target.Port, resolver, networks, stop);

    private static async Task<SendOutcome> SendAsync(
        int port, IHostResolver? resolver = null, IReadOnlyCollection<IPNetwork>? networks = null, CancellationToken? stop = null)
    {
        var guard = new AddressGuard(networks ?? [IPNetwork.Parse("127.0.0.0/8")]);
        using var http = new GuardedConnection(new HashSet<string> { Host }, guard, resolver ?? new FixedResolver(["127.0.0.1"])).CreateClient();
        var url = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://{Host}:{port}/alerts?room=2"));
        return await new WebhookChannel(RecordingChannel.PolicyOf("webhook:chat"), url, Key, http, Time)
            .SendAsync([Samples.Alert], stop ?? TestContext.Current.CancellationToken);
    }
}
