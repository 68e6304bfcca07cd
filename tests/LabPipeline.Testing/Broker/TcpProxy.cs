using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace LabPipeline.Testing.Broker;

/// <summary>Stands between a client and a server and can stop carrying bytes one way or both, as a network does that drops packets: nobody is told.</summary>
public sealed class TcpProxy : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stopped = new();
    private readonly ConcurrentBag<TcpClient> _clients = [];
    private readonly int _target;
    private readonly Task _accepting;
    private volatile TaskCompletionSource _outward = Open();
    private volatile TaskCompletionSource _inward = Open();

    public TcpProxy(int targetPort)
    {
        _target = targetPort;
        _listener.Start();
        _accepting = AcceptAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>From now on nothing passes in the directions named.</summary>
    public void Cut(bool towardsServer, bool towardsClient)
    {
        _outward = towardsServer ? Closed() : _outward;
        _inward = towardsClient ? Closed() : _inward;
    }

    public void Heal()
    {
        _outward.TrySetResult();
        _inward.TrySetResult();
    }

    public async ValueTask DisposeAsync()
    {
        await _stopped.CancelAsync();
        Heal();
        _listener.Stop();
        await _accepting;
        foreach (var client in _clients)
        {
            client.Dispose();
        }

        _listener.Dispose();
        _stopped.Dispose();
    }

    private static TaskCompletionSource Closed() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private static TaskCompletionSource Open()
    {
        var open = Closed();
        open.SetResult();
        return open;
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (!_stopped.IsCancellationRequested)
            {
                var client = await _listener.AcceptTcpClientAsync(_stopped.Token);
                _clients.Add(client);
                _ = CarryAsync(client);
            }
        }
        catch (Exception exception) when (exception is OperationCanceledException or SocketException)
        {
            // The test is over.
        }
    }

    private async Task CarryAsync(TcpClient client)
    {
        try
        {
            var server = new TcpClient();
            _clients.Add(server);
            await server.ConnectAsync(IPAddress.Loopback, _target, _stopped.Token);
            var outward = PumpAsync(client.GetStream(), server.GetStream(), () => _outward.Task);
            var inward = PumpAsync(server.GetStream(), client.GetStream(), () => _inward.Task);
            await Task.WhenAny(outward, inward);
        }
        catch (Exception exception) when (exception is OperationCanceledException or SocketException or IOException or ObjectDisposedException)
        {
            // The client learns it from its own connection.
        }

        client.Close();
    }

    private async Task PumpAsync(NetworkStream from, NetworkStream to, Func<Task> passable)
    {
        var buffer = new byte[16 * 1024];
        for (var count = await from.ReadAsync(buffer, _stopped.Token); count > 0; count = await from.ReadAsync(buffer, _stopped.Token))
        {
            await passable();
            await to.WriteAsync(buffer.AsMemory(0, count), _stopped.Token);
        }
    }
}
