using System.Buffers;
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace LabPipeline.Benchmarks;

/// <summary>A mail server on this computer that notes when it took each mail.</summary>
internal sealed class AlertMailbox : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly Shelf _shelf = new();
    private readonly Task _serving;

    public AlertMailbox()
    {
        using (var listener = new TcpListener(IPAddress.Loopback, 0))
        {
            listener.Start();
            Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        }

        var options = new SmtpServerOptionsBuilder().ServerName("mailbox")
            .Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port)))
            .Build();
        var provider = new ServiceProvider();
        provider.Add(_shelf);
        _serving = new SmtpServer.SmtpServer(options, provider).StartAsync(_stop.Token);
    }

    public int Port { get; }

    /// <summary>Subjects and the timestamps at which the mails were taken.</summary>
    public IReadOnlyCollection<(string Subject, long At)> Mails => _shelf.Mails;

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
    }

    private sealed class Shelf : MessageStore
    {
        public ConcurrentQueue<(string Subject, long At)> Mails { get; } = new();

        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            var at = Stopwatch.GetTimestamp();
            using var stream = new MemoryStream(buffer.ToArray());
            using var message = await MimeMessage.LoadAsync(stream, cancellationToken);
            Mails.Enqueue((message.Subject ?? "", at));
            return SmtpResponse.Ok;
        }
    }
}
