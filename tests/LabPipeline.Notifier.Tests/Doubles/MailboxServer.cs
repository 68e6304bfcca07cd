using System.Buffers;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A well-behaved mail server that somebody else wrote, and the mails it took.</summary>
internal sealed class MailboxServer : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly Mailbox _mailbox = new();
    private readonly Task _serving;

    public MailboxServer()
    {
        Port = FreePort();
        var options = new SmtpServerOptionsBuilder().ServerName("mailbox")
            .Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port)))
            .Build();
        var provider = new ServiceProvider();
        provider.Add(_mailbox);
        _serving = new SmtpServer.SmtpServer(options, provider).StartAsync(_stop.Token);
    }

    public int Port { get; }

    public IReadOnlyList<MimeMessage> Mails => _mailbox.Mails;

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private sealed class Mailbox : MessageStore
    {
        public List<MimeMessage> Mails { get; } = [];

        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            using var stream = new MemoryStream(buffer.ToArray());
            Mails.Add(await MimeMessage.LoadAsync(stream, cancellationToken));
            return SmtpResponse.Ok;
        }
    }
}
