using System.Net;
using System.Net.Sockets;

namespace LabPipeline.Notifier.Channels;

/// <summary>Opens webhook connections: the host must be listed, and the very addresses that were checked are connected to.</summary>
/// <remarks>Checking a name and letting the client resolve it again would let its owner answer differently the second time.</remarks>
public sealed class GuardedConnection(IReadOnlySet<string> hosts, AddressGuard guard, IHostResolver resolver)
{
    /// <summary>A client that follows no redirect, uses no proxy and keeps no cookies.</summary>
    public HttpMessageInvoker CreateClient() => new(
        new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            UseProxy = false,
            UseCookies = false,
            PooledConnectionIdleTimeout = TimeSpan.FromSeconds(30),
            ConnectCallback = async (context, token) => await ConnectAsync(context.DnsEndPoint, token).ConfigureAwait(false),
        },
        disposeHandler: true);

    private async Task<Stream> ConnectAsync(DnsEndPoint target, CancellationToken cancellationToken)
    {
        if (!hosts.Contains(target.Host))
        {
            throw new HttpRequestException($"Host '{target.Host}' is not in Notifier:WebhookHosts; nothing was sent.");
        }

        var addresses = await resolver.ResolveAsync(target.Host, cancellationToken).ConfigureAwait(false);
        if (addresses.FirstOrDefault(address => !guard.Allows(address)) is { } refused)
        {
            throw new HttpRequestException(
                $"Host '{target.Host}' resolves to {refused}, which is not a public address; nothing was sent. "
                + "If the target is meant to be inside, list its address in Notifier:WebhookPrivateNetworks.");
        }

        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(addresses, target.Port, cancellationToken).ConfigureAwait(false);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
