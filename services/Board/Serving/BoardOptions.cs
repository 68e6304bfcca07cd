namespace LabPipeline.Board.Serving;

/// <summary>How the board is reached.</summary>
public sealed class BoardOptions
{
    public const string Section = "Board";

    /// <summary>The one address the board listens on; default <c>http://127.0.0.1:5080</c>. Any other than a loopback address needs https, a certificate and people.</summary>
    public string Url { get; set; } = "http://127.0.0.1:5080";

    /// <summary>Host names, without port, under which browsers in the network ask for the board; requests under any other are refused.</summary>
    public IReadOnlyList<string> Names { get; set; } = [];

    /// <summary>The certificate for https: a PEM file, its key in <see cref="CertificateKey"/>.</summary>
    public string? Certificate { get; set; }

    /// <summary>The certificate's private key, a PEM file readable by the board alone.</summary>
    public string? CertificateKey { get; set; }

    /// <summary>Where traces and measurements go (OTLP), such as <c>http://127.0.0.1:4317</c>; null for nowhere.</summary>
    public string? Telemetry { get; set; }

    public bool IsLoopback => Uri.TryCreate(Url, UriKind.Absolute, out var url)
        && (url.IdnHost == "localhost" || (System.Net.IPAddress.TryParse(url.IdnHost, out var address) && System.Net.IPAddress.IsLoopback(address)));

    public bool IsTls => Url.StartsWith("https:", StringComparison.OrdinalIgnoreCase);
}
