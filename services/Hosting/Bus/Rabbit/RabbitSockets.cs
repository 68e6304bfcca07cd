using System.Net.Sockets;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>The network connections of one line, so that they can be cut when the client behind them no longer listens.</summary>
/// <remarks>Cutting makes the broker take back what the line still held, and keeps an abandoned client from connecting ever again.</remarks>
internal sealed class RabbitSockets
{
    private readonly Lock _guard = new();
    private readonly List<ITcpClient> _open = [];
    private bool _cut;

    /// <summary>Connections made by <paramref name="factory"/> from now on belong to the line.</summary>
    public void Adopt(ConnectionFactory factory) => factory.SocketFactory = Connect;

    public void Cut()
    {
        lock (_guard)
        {
            _cut = true;
            _open.ForEach(socket => socket.Close());
            _open.Clear();
        }
    }

    private ITcpClient Connect(AddressFamily family)
    {
        lock (_guard)
        {
            if (_cut)
            {
                throw new SocketException((int)SocketError.Shutdown);
            }

            var socket = ConnectionFactoryBase.DefaultSocketFactory(family);
            _open.Add(socket);
            return socket;
        }
    }
}
