namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>The broker, used when <c>Lab:Bus</c> is <c>rabbitmq</c> (section <c>Lab:Rabbit</c> of the settings).</summary>
public sealed class RabbitOptions
{
    public const string Section = "Lab:Rabbit";

    private const int PlainPort = 5672;
    private const int TlsPort = 5671;

    public string Host { get; set; } = "localhost";

    /// <summary>0 means the usual one: 5671 with TLS, 5672 without.</summary>
    public int Port { get; set; }

    public string VirtualHost { get; set; } = "/";

    public string User { get; set; } = "";

    /// <summary>File that holds the password and that only its owner can read.</summary>
    public string PasswordFile { get; set; } = "";

    /// <summary>Name of the environment variable that holds the password, where no file is named.</summary>
    public string PasswordVariable { get; set; } = "";

    /// <summary>Whether the connection is encrypted and the broker's certificate checked against the machine's trusted ones.</summary>
    public bool Tls { get; set; }

    /// <summary>The name in the broker's certificate where it is not <see cref="Host"/>.</summary>
    public string TlsServerName { get; set; } = "";

    public int EffectivePort => Port != 0 ? Port : Tls ? TlsPort : PlainPort;

    public string EffectiveServerName => TlsServerName.Length > 0 ? TlsServerName : Host;
}
