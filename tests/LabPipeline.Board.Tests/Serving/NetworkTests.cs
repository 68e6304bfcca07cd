using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using LabPipeline.Board.People;
using LabPipeline.Board.Serving;
using LabPipeline.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace LabPipeline.Board.Tests.Serving;

/// <summary>A board the network can reach: encrypted, under its own names, and only once somebody can sign in.</summary>
public sealed class NetworkTests
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(71)]
    public async Task Start_ForTheNetworkBeforeAnybodyCanSignIn_IsRefused()
    {
        using var folder = new ScratchFolder();
        using var errors = new StringWriter();

        var exit = await BoardHost.RunAsync([.. Settings(folder), "--Board:Url", "https://0.0.0.0:0"], TextWriter.Null, errors);

        Assert.Equal(1, exit);
        Assert.Contains("nobody may sign in yet; make the first administrator", errors.ToString(), StringComparison.Ordinal);
    }

    // HTTP Strict Transport Security: RFC 6797. Secure attribute of cookies: RFC 6265, 4.1.2.5.
    [Fact]
    public async Task Board_UnderTls_AnswersUnderItsNamesAloneAndMarksCookiesSecure()
    {
        using var folder = new ScratchFolder();
        await using var app = BoardHost.Build([.. Settings(folder), "--Board:Url", "https://127.0.0.1:0"], TimeProvider.System);
        await BoardHost.StartAsync(app, Token);
        using var handler = new SocketsHttpHandler { UseProxy = false, AllowAutoRedirect = false, UseCookies = false };
        handler.SslOptions.RemoteCertificateValidationCallback = (_, certificate, _, errors) =>
            errors.HasFlag(SslPolicyErrors.RemoteCertificateChainErrors) && certificate?.Subject == "CN=board.example";
        using var client = new HttpClient(handler) { BaseAddress = new Uri(app.Urls.Single()) };

        using var own = await SendAsync(client, "board.example");
        using var other = await SendAsync(client, "elsewhere.example");

        Assert.Equal((200, 400), ((int)own.StatusCode, (int)other.StatusCode));
        Assert.Equal(["max-age=31536000"], own.Headers.GetValues("Strict-Transport-Security"));
        await app.Services.GetRequiredService<PeopleDesk>().AddAsync("sam", Role.Look, "four pale russet chips", "test", Token);
        using var form = await SendAsync(client, "board.example");
        Assert.Contains("; secure", form.Headers.GetValues("Set-Cookie").Single(), StringComparison.OrdinalIgnoreCase);
    }

    private static Task<HttpResponseMessage> SendAsync(HttpClient client, string host)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "/sign-in");
        request.Headers.Host = host;
        return client.SendAsync(request, Token);
    }

    /// <summary>A certificate made for this test alone.</summary>
    private static string[] Settings(ScratchFolder folder)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=board.example", key, HashAlgorithmName.SHA256);
        using var certificate = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        File.WriteAllText(folder.File("board.pem"), certificate.ExportCertificatePem());
        File.WriteAllText(folder.File("board.key"), key.ExportPkcs8PrivateKeyPem());
        return
        [
            "--Lab:DataFolder", folder.Path, "--Board:Names:0", "board.example",
            "--Board:Certificate", folder.File("board.pem"), "--Board:CertificateKey", folder.File("board.key"),
        ];
    }
}
