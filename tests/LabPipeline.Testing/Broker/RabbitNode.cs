using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace LabPipeline.Testing.Broker;

/// <summary>A private broker on loopback with ports, folders and name server of its own; it can be stopped, killed, frozen and started again on its data.</summary>
public sealed class RabbitNode : IAsyncDisposable
{
    private const string Programs = "/usr/lib/rabbitmq/bin";

    private const int MostStarts = 3;

    // A fresh node is up in 6 s on an idle machine.
    private static readonly TimeSpan LongestStart = TimeSpan.FromSeconds(90);

    private static readonly byte[] Greeting = [(byte)'A', (byte)'M', (byte)'Q', (byte)'P', 0, 0, 9, 1];

    private readonly ScratchFolder _folder = new();
    private readonly int _namePort = FreePort();
    private readonly int _distributionPort = FreePort();
    private readonly string _name = $"labpipeline-{Guid.NewGuid():N}@localhost";

    private RabbitNode() => Port = FreePort();

    /// <summary>Whether the distribution's package is there; called past its wrapper, it runs as any user and starts no service.</summary>
    public static bool IsInstalled => File.Exists(Path.Combine(Programs, "rabbitmq-server"));

    public int Port { get; }

    private string PidFile => _folder.File("pid");

    public static async Task<RabbitNode> StartNewAsync()
    {
        var node = new RabbitNode();
        await File.WriteAllTextAsync(node._folder.File("enabled_plugins"), "[].");
        await File.WriteAllTextAsync(node._folder.File("rabbitmq-env.conf"), "");
        try
        {
            await node.StartAsync();
            return node;
        }
        catch
        {
            await node.DisposeAsync();
            throw;
        }
    }

    /// <summary>Starts it, on the data it was stopped with, and waits until it answers.</summary>
    public async Task StartAsync()
    {
        var watch = Stopwatch.StartNew();
        for (var starts = 1; !await TryStartAsync(watch); starts++)
        {
            // Seen on a busy machine: a node whose name server does not answer in time ends at once.
            if (starts == MostStarts || watch.Elapsed > LongestStart)
            {
                throw new InvalidOperationException(
                    $"The private broker does not answer on port {Port} after {starts} starts and {watch.Elapsed.TotalSeconds:0} s: {await LastWordsAsync()}");
            }
        }
    }

    /// <summary>Stops it as its service manager does.</summary>
    public Task StopAsync() => EndAsync("TERM");

    /// <summary>Ends it as a power cut of the process does.</summary>
    public Task KillAsync() => EndAsync("KILL");

    /// <summary>Leaves it standing with open connections, answering nothing.</summary>
    public void Freeze() => Signal("STOP", Pid());

    public void Thaw() => Signal("CONT", Pid());

    /// <summary>Runs the broker's own control program.</summary>
    public async Task<string> ControlAsync(params string[] arguments)
    {
        using var process = Run("rabbitmqctl", ["-q", "-n", _name, .. arguments], redirect: true);
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? await output : throw new InvalidOperationException($"rabbitmqctl {string.Join(' ', arguments)}: {await output}{await errors}");
    }

    public async ValueTask DisposeAsync()
    {
        if (File.Exists(PidFile))
        {
            Signal("CONT", Pid());
            await KillAsync();
        }

        using (var names = Run("epmd", ["-port", _namePort.ToString(CultureInfo.InvariantCulture), "-kill"], redirect: true, folder: ""))
        {
            await names.WaitForExitAsync();
        }

        _folder.Dispose();
    }

    /// <summary>A port below those the system hands out for a moment: one of these could be given away again before the node, which takes seconds, listens on it.</summary>
    private static int FreePort()
    {
        while (true)
        {
            var port = Random.Shared.Next(20_000, 32_000);
            try
            {
                using var listener = new TcpListener(IPAddress.Loopback, port);
                listener.Start();
                return port;
            }
            catch (SocketException)
            {
                // Somebody listens on it.
            }
        }
    }

    private static void Signal(string signal, int pid)
    {
        using var process = Process.Start("kill", [$"-{signal}", pid.ToString(CultureInfo.InvariantCulture)]);
        process.WaitForExit();
    }

    private int Pid() => int.Parse(File.ReadAllText(PidFile), CultureInfo.InvariantCulture);

    private async Task EndAsync(string signal)
    {
        var pid = Pid();
        Signal(signal, pid);
        while (Directory.Exists(string.Create(CultureInfo.InvariantCulture, $"/proc/{pid}")))
        {
            await Task.Delay(50);
        }

        File.Delete(PidFile);
    }

    private async Task<bool> TryStartAsync(Stopwatch watch)
    {
        using var server = Run("rabbitmq-server", []);
        while (!await AnswersAsync())
        {
            if (server.HasExited || watch.Elapsed > LongestStart)
            {
                return false;
            }

            await Task.Delay(100);
        }

        return true;
    }

    private async Task<string> LastWordsAsync()
    {
        var words = await File.ReadAllTextAsync(_folder.File("out.log"));
        return words[^Math.Min(words.Length, 4000)..];
    }

    private async Task<bool> AnswersAsync()
    {
        try
        {
            using var client = new TcpClient();
            await client.ConnectAsync(IPAddress.Loopback, Port);
            await using var stream = client.GetStream();
            await stream.WriteAsync(Greeting);
            return await stream.ReadAsync(new byte[1]).AsTask().WaitAsync(TimeSpan.FromSeconds(2)) == 1;
        }
        catch (Exception exception) when (exception is SocketException or IOException or TimeoutException)
        {
            return false;
        }
    }

    private Process Run(string program, string[] arguments, bool redirect = false, string folder = Programs)
    {
        // A session of its own: what ends the test run must not end the node half-way.
        var start = new ProcessStartInfo(redirect ? Path.Combine(folder, program) : "setsid")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = _folder.Path,
        };
        if (!redirect)
        {
            start.ArgumentList.Add("sh");
            start.ArgumentList.Add("-c");
            start.ArgumentList.Add($"exec {Path.Combine(folder, program)} >>out.log 2>&1 </dev/null");
        }

        Array.ForEach(arguments, start.ArgumentList.Add);
        foreach (var (name, value) in Settings())
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    private Dictionary<string, string> Settings()
    {
        string Text(int port) => port.ToString(CultureInfo.InvariantCulture);
        return new Dictionary<string, string>
        {
            ["HOME"] = _folder.Path,
            ["LANG"] = "C.UTF-8",
            ["ERL_EPMD_ADDRESS"] = "127.0.0.1",
            ["ERL_EPMD_PORT"] = Text(_namePort),
            ["RABBITMQ_NODENAME"] = _name,
            ["RABBITMQ_NODE_IP_ADDRESS"] = "127.0.0.1",
            ["RABBITMQ_NODE_PORT"] = Text(Port),
            ["RABBITMQ_DIST_PORT"] = Text(_distributionPort),
            ["RABBITMQ_MNESIA_BASE"] = _folder.File("data"),
            ["RABBITMQ_LOG_BASE"] = _folder.File("log"),
            ["RABBITMQ_ENABLED_PLUGINS_FILE"] = _folder.File("enabled_plugins"),
            ["RABBITMQ_CONFIG_FILE"] = _folder.File("rabbitmq"),
            ["RABBITMQ_CONF_ENV_FILE"] = _folder.File("rabbitmq-env.conf"),
            ["RABBITMQ_PID_FILE"] = PidFile,
            ["RABBITMQ_SERVER_ADDITIONAL_ERL_ARGS"] = "-kernel inet_dist_use_interface {127,0,0,1}",
        };
    }
}
