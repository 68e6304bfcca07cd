using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Serving;

/// <summary>Keeps the board on this computer unless everything the network needs is there: encryption, and names to be asked for by.</summary>
internal sealed class BoardOptionsValidator : IValidateOptions<BoardOptions>
{
    private const string Expected = "expected one address such as http://127.0.0.1:5080, or https://0.0.0.0:5443 for the network";

    public ValidateOptionsResult Validate(string? name, BoardOptions options)
    {
        if (!Uri.TryCreate(options.Url, UriKind.Absolute, out var url) || (url.Scheme != Uri.UriSchemeHttp && url.Scheme != Uri.UriSchemeHttps)
            || url.PathAndQuery != "/" || url.UserInfo.Length > 0)
        {
            return ValidateOptionsResult.Fail($"Board:Url is '{options.Url}'; {Expected}.");
        }

        var faults = new List<string>();
        if (!options.IsLoopback)
        {
            AddNetworkFaults(options, faults);
        }

        if (options.IsTls)
        {
            AddFileFault(nameof(options.Certificate), options.Certificate, faults);
            AddFileFault(nameof(options.CertificateKey), options.CertificateKey, faults);
        }

        if (options.Telemetry is { } telemetry && !Uri.TryCreate(telemetry, UriKind.Absolute, out _))
        {
            faults.Add($"Board:Telemetry is '{telemetry}'; expected an address such as http://127.0.0.1:4317.");
        }

        return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
    }

    private static void AddNetworkFaults(BoardOptions options, List<string> faults)
    {
        if (!options.IsTls)
        {
            faults.Add($"Board:Url is '{options.Url}', which the network can reach, without encryption; {Expected}, with Board:Certificate and Board:CertificateKey.");
        }

        if (options.Names.Count == 0)
        {
            faults.Add("Board:Names is empty; expected the names browsers in the network ask by, such as Board:Names:0 = board.lab.example.");
        }
    }

    private static void AddFileFault(string setting, string? path, List<string> faults)
    {
        if (string.IsNullOrEmpty(path) || !File.Exists(path))
        {
            faults.Add($"Board:{setting} is '{path}'; expected a PEM file, because Board:Url begins with https.");
        }
    }
}
