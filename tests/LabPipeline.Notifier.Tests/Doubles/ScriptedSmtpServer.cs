using System.Net;
using System.Net.Sockets;
using System.Text;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A mail server on the loopback that misbehaves as told: it answers chosen commands wrongly, late, or by hanging up.</summary>
internal sealed class ScriptedSmtpServer : IAsyncDisposable
{
    public const string EndOfData = ".";

    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _serving;

    public ScriptedSmtpServer()
    {
        _listener.Start();
        _serving = ServeAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Answers by the first word of a command ("MAIL", "RCPT", "DATA", "." for the end of the message, "" for the greeting).</summary>
    public Dictionary<string, string> Answers { get; } = [];

    /// <summary>Commands after which the line is cut without an answer.</summary>
    public HashSet<string> HangUpAt { get; } = [];

    /// <summary>Commands after which nothing more is said.</summary>
    public HashSet<string> FallSilentAt { get; } = [];

    /// <summary>Messages whose final dot arrived.</summary>
    public List<string> Messages { get; } = [];

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
            try
            {
                await TalkAsync(client.GetStream());
            }
            catch (IOException)
            {
                // The client hung up, as it may.
            }
        }
    }

    private async Task TalkAsync(NetworkStream stream)
    {
        using var reader = new StreamReader(stream, Encoding.UTF8);
        if (!await AnswerAsync(stream, "", "220 ready"))
        {
            return;
        }

        while (await reader.ReadLineAsync(_stop.Token) is { } line)
        {
            var command = line.Split(' ', ':')[0].ToUpperInvariant();
            var usual = command switch { "EHLO" => "250 scripted", "DATA" => "354 go on", "QUIT" => "221 bye", _ => "250 ok" };
            if (!await AnswerAsync(stream, command, usual))
            {
                return;
            }

            if (command == "DATA" && !Answers.ContainsKey("DATA") && !await TakeMessageAsync(reader, stream))
            {
                return;
            }
        }
    }

    private async Task<bool> TakeMessageAsync(StreamReader reader, NetworkStream stream)
    {
        var message = new StringBuilder();
        while (await reader.ReadLineAsync(_stop.Token) is { } line)
        {
            if (line == EndOfData)
            {
                Messages.Add(message.ToString());
                return await AnswerAsync(stream, EndOfData, "250 taken");
            }

            message.Append(line).Append('\n');
        }

        return false;
    }

    private async Task<bool> AnswerAsync(NetworkStream stream, string command, string usual)
    {
        if (FallSilentAt.Contains(command))
        {
            await Task.Delay(Timeout.Infinite, _stop.Token);
        }

        if (HangUpAt.Contains(command))
        {
            return false;
        }

        await stream.WriteAsync(Encoding.UTF8.GetBytes(Answers.GetValueOrDefault(command, usual) + "\r\n"), _stop.Token);
        return true;
    }
}
