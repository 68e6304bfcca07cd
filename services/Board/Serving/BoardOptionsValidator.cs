using System.Net;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Serving;

/// <summary>Keeps the board on this computer: whoever reaches it sees everything, because nobody signs in.</summary>
internal sealed class BoardOptionsValidator : IValidateOptions<BoardOptions>
{
    private const string Expected = "expected one address of this computer such as http://127.0.0.1:5080";

    public ValidateOptionsResult Validate(string? name, BoardOptions options)
    {
        if (!Uri.TryCreate(options.Url, UriKind.Absolute, out var url) || url.Scheme != Uri.UriSchemeHttp || url.PathAndQuery != "/" || url.UserInfo.Length > 0)
        {
            return ValidateOptionsResult.Fail($"Board:Url is '{options.Url}'; {Expected}.");
        }

        return IsLoopback(url)
            ? ValidateOptionsResult.Success
            : ValidateOptionsResult.Fail($"Board:Url is '{options.Url}'; {Expected}: there is no sign-in yet, so the board does not open to the network.");
    }

    private static bool IsLoopback(Uri url) =>
        url.IdnHost == "localhost" || (IPAddress.TryParse(url.IdnHost, out var address) && IPAddress.IsLoopback(address));
}
