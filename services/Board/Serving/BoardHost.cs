using System.Data.Common;
using LabPipeline.Board.Layout;
using LabPipeline.Hosting;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.XmlEncryption;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.Extensions.Options;

namespace LabPipeline.Board.Serving;

/// <summary>Puts the board together: the warehouse to read from, the pages, and one loopback address.</summary>
internal static class BoardHost
{
    private const string ReadyTag = "ready";

    // A page elsewhere can point a name of its own at 127.0.0.1; requests under such a name are turned away.
    private static readonly string[] OwnNames = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>Runs the board until the process is told to stop; what keeps it from starting is one line for the person who started it.</summary>
    /// <returns>The exit code.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter errors)
    {
        try
        {
            var app = Build(args, TimeProvider.System);
            await using (app)
            {
                await StartAsync(app, CancellationToken.None);
                await output.WriteLineAsync($"The board is open at {string.Join(" and ", app.Urls)}; Ctrl+C closes it.");
                await app.WaitForShutdownAsync();
                return 0;
            }
        }
        catch (Exception exception) when (exception is OptionsValidationException or InvalidOperationException or IOException or UnauthorizedAccessException or DbException)
        {
            await errors.WriteLineAsync($"The board does not start. {exception.Message}");
            return 1;
        }
    }

    public static WebApplication Build(string[] args, TimeProvider time)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            ApplicationName = typeof(BoardHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton<LabClock>();
        LabHost.ComposeReader(builder);
        AddServing(builder);
        var app = builder.Build();
        UsePages(app);
        return app;
    }

    /// <summary>Brings the warehouse to the newest schema and opens the address.</summary>
    /// <exception cref="OptionsValidationException">A setting is wrong; nothing was created.</exception>
    public static async Task StartAsync(WebApplication app, CancellationToken cancellationToken)
    {
        app.Urls.Add(app.Services.GetRequiredService<IOptions<BoardOptions>>().Value.Url);
        await LabHost.PrepareAsync(app.Services, cancellationToken);
        await app.StartAsync(cancellationToken);
    }

    private static void AddServing(WebApplicationBuilder builder)
    {
        builder.Services.AddOptions<BoardOptions>().Bind(builder.Configuration.GetSection(BoardOptions.Section));
        builder.Services.AddSingleton<IValidateOptions<BoardOptions>, BoardOptionsValidator>();
        // Endpoints of the Kestrel section would open addresses beside Board:Url.
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Configure();
            kestrel.AddServerHeader = false;
        });
        builder.Services.Configure<HostFilteringOptions>(filtering =>
        {
            filtering.AllowedHosts = OwnNames;
            filtering.AllowEmptyHosts = false;
        });
        builder.Services.AddHealthChecks().AddCheck<WarehouseCheck>("warehouse", tags: [ReadyTag]);
        builder.Services.Configure<KeyManagementOptions>(keys =>
        {
            keys.XmlRepository = new PassingKeys();
            keys.XmlEncryptor = new NullXmlEncryptor();
        });
        builder.Services.AddLocalization();
        builder.Services.AddRazorComponents();
    }

    private static void UsePages(WebApplication app)
    {
        app.UseSecurityHeaders();
        app.UseExceptionHandler("/failed", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/missing", createScopeForStatusCodePages: true);
        app.UseStaticFiles();
        app.UseAntiforgery();
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = check => check.Tags.Contains(ReadyTag) });
        app.MapRazorComponents<App>();
    }
}
