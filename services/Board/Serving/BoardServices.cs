using System.Security.Cryptography.X509Certificates;
using LabPipeline.Board.Api;
using LabPipeline.Board.Arrivals;
using LabPipeline.Board.Bench;
using LabPipeline.Board.Live;
using LabPipeline.Board.Office;
using LabPipeline.Board.People;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Serving;

/// <summary>What the board needs beyond the warehouse.</summary>
internal static class BoardServices
{
    public const string ReadyTag = "ready";

    private const string CookieKeys = "LabPipeline.Board";

    // A page elsewhere can point a name of its own at 127.0.0.1; requests under such a name are turned away.
    private static readonly string[] OwnNames = ["localhost", "127.0.0.1", "[::1]"];

    public static void Add(WebApplicationBuilder builder)
    {
        builder.Services.AddOptions<BoardOptions>().Bind(builder.Configuration.GetSection(BoardOptions.Section));
        builder.Services.AddSingleton<IValidateOptions<BoardOptions>, BoardOptionsValidator>();
        builder.WebHost.ConfigureKestrel(Listen);
        builder.Services.AddOptions<HostFilteringOptions>().Configure<IOptions<BoardOptions>>((filtering, board) =>
        {
            filtering.AllowedHosts = [.. OwnNames, .. board.Value.Names];
            filtering.AllowEmptyHosts = false;
        });
        builder.Services.AddHealthChecks().AddCheck<WarehouseCheck>("warehouse", tags: [ReadyTag]).AddCheck<PipelineCheck>("pipeline", tags: [ReadyTag]);
        builder.Services.AddDataProtection().SetApplicationName(CookieKeys);
        builder.Services.AddSingleton<IConfigureOptions<KeyManagementOptions>, KeyFolder>();
        SignInSetUp.Add(builder.Services);
        ApiSetUp.Add(builder.Services);
        Telemetry.Add(builder);
        builder.Services.AddSingleton<LivePosition>();
        builder.Services.AddSingleton<LiveMemory>();
        builder.Services.AddSingleton<ProfileDesk>();
        builder.Services.AddSingleton<BenchDesk>();
        builder.Services.AddSingleton<LimitDesk>();
        builder.Services.AddLocalization();
        builder.Services.AddRazorComponents();
    }

    private static void Listen(KestrelServerOptions kestrel)
    {
        // Endpoints of the Kestrel section would open addresses beside Board:Url.
        kestrel.Configure();
        kestrel.AddServerHeader = false;
        kestrel.ConfigureHttpsDefaults(https =>
        {
            var board = kestrel.ApplicationServices.GetRequiredService<IOptions<BoardOptions>>().Value;
            using var pem = X509Certificate2.CreateFromPemFile(board.Certificate!, board.CertificateKey);

            // Windows serves no certificate whose key it has only in memory.
            https.ServerCertificate = X509CertificateLoader.LoadPkcs12(pem.Export(X509ContentType.Pkcs12), null);
        });
    }
}
