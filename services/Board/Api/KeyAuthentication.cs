using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Api;

/// <summary>Lets a program in by its key: <c>Authorization: Bearer labkey-…</c>.</summary>
internal sealed class KeyAuthentication(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory loggers, UrlEncoder encoder, KeyDesk keys)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, loggers, encoder)
{
    public const string SchemeName = "key";

    private const string Bearer = "Bearer ";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(Bearer + KeyDesk.Prefix, StringComparison.Ordinal))
        {
            return AuthenticateResult.NoResult();
        }

        if (await keys.FindAsync(header[Bearer.Length..], Context.RequestAborted) is not { } key)
        {
            return AuthenticateResult.Fail("No key in force.");
        }

        var identity = new ClaimsIdentity([new Claim(ClaimTypes.Name, "key:" + key.Name)], SchemeName);
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        Response.Headers.WWWAuthenticate = "Bearer";
        return Task.CompletedTask;
    }
}
