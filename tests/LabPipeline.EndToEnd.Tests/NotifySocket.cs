using System.Net.Sockets;
using System.Text;
using LabPipeline.Testing;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>The end of the socket that systemd listens at: what a service says about itself, as sd_notify(3) describes it.</summary>
internal sealed class NotifySocket : IDisposable
{
    private readonly ScratchFolder _folder = new();
    private readonly Socket _socket = new(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);

    public NotifySocket()
    {
        _socket.Bind(new UnixDomainSocketEndPoint(Address));
    }

    public string Address => _folder.File("notify");

    /// <summary>Waits until the service has said <paramref name="state"/>; other things it says meanwhile are passed over.</summary>
    public async Task HearAsync(string state, TimeSpan patience, CancellationToken cancellationToken)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(patience);
        var buffer = new byte[1024];
        while (true)
        {
            var length = await _socket.ReceiveAsync(buffer, limit.Token);
            if (Encoding.UTF8.GetString(buffer, 0, length).Split('\n').Contains(state))
            {
                return;
            }
        }
    }

    public void Dispose()
    {
        _socket.Dispose();
        _folder.Dispose();
    }
}
