using System.Net;
using System.Net.Sockets;
using System.Text;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A web server on the loopback that answers every request with the same text, hangs, or resets the line.</summary>
internal sealed class WebhookTarget : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _serving;

    public WebhookTarget(string statusLine)
    {
        Answer = statusLine;
        _listener.Start();
        _serving = ServeAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Status line and headers; "hang" for none at all, "reset" to reset the line, "drip" for an answer that never ends.</summary>
    public string Answer { get; set; }

    public List<WebhookRequest> Requests { get; } = [];

    public int Connections { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Stop();
        await _serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
    }

    private async Task ServeAsync()
    {
        while (!_stop.IsCancellationRequested)
        {
            using var client = await _listener.AcceptTcpClientAsync(_stop.Token);
            Connections++;
            try
            {
                await AnswerAsync(client);
            }
            catch (IOException)
            {
                // The client hung up, as it may.
            }
        }
    }

    private async Task AnswerAsync(TcpClient client)
    {
        var stream = client.GetStream();
        Requests.Add(await WebhookRequest.ReadAsync(stream, _stop.Token));
        switch (Answer)
        {
            case "hang":
                await stream.ReadExactlyAsync(new byte[1], _stop.Token);
                break;
            case "reset":
                client.LingerState = new LingerOption(true, 0);
                break;
            case "drip":
                await stream.WriteAsync("HTTP/1.1 200 OK\r\nContent-Length: 1000000\r\n\r\n"u8.ToArray(), _stop.Token);
                await stream.ReadExactlyAsync(new byte[1], _stop.Token);
                break;
            default:
                await stream.WriteAsync(Encoding.ASCII.GetBytes($"HTTP/1.1 {Answer}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n"), _stop.Token);
                break;
        }
    }
}
