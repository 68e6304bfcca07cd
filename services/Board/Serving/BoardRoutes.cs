using LabPipeline.Board.Alerts;
using LabPipeline.Board.Api;
using LabPipeline.Board.Arrivals;
using LabPipeline.Board.Bench;
using LabPipeline.Board.Layout;
using LabPipeline.Board.Live;
using LabPipeline.Board.Office;
using LabPipeline.Board.Papers;
using LabPipeline.Board.People;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;

namespace LabPipeline.Board.Serving;

/// <summary>In which order a request meets what.</summary>
internal static class BoardRoutes
{
    private const string ForPrograms = "/api";

    public static void Use(WebApplication app)
    {
        app.UseSecurityHeaders();
        app.UseExceptionHandler("/failed", createScopeForErrors: true);
        app.UseWhen(
            context => !context.Request.Path.StartsWithSegments(ForPrograms, StringComparison.OrdinalIgnoreCase),
            pages => pages.UseStatusCodePagesWithReExecute("/missing", createScopeForStatusCodePages: true));
        app.Use(LookAtTold);
        app.UseStaticFiles(new StaticFileOptions { OnPrepareResponse = file => SecurityHeaders.AllowKeeping(file.Context.Response) });
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseAntiforgery();
        app.Use(ForgetWhatWasBefore);
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = check => check.Tags.Contains(BoardServices.ReadyTag), ResponseWriter = ReadyAnswer.WriteAsync }).AllowAnonymous();
        app.MapGet("/live", (LivePosition position, CancellationToken cancellationToken) => position.NowAsync(cancellationToken));
        app.MapPrometheusScrapingEndpoint(Telemetry.MetricsPath).RequireAuthorization(ApiEndpoints.Policy);
        SignInEndpoints.Map(app);
        PeopleEndpoints.Map(app);
        AlertEndpoints.Map(app);
        FileEndpoints.Map(app);
        BenchEndpoints.Map(app);
        PaperEndpoints.Map(app);
        LimitEndpoints.Map(app);
        ChannelEndpoints.Map(app);
        ApiEndpoints.Map(app);
        KeyEndpoints.Map(app);
        app.MapRazorComponents<App>();
    }

    /// <summary>Whoever sends a form sees on the next page what it did.</summary>
    private static async Task ForgetWhatWasBefore(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        finally
        {
            if (!HttpMethods.IsGet(context.Request.Method))
            {
                context.RequestServices.GetRequiredService<LivePosition>().Forget();
            }
        }
    }

    /// <summary>The page that tells what went wrong is looked at, whatever was being sent when it did.</summary>
    private static Task LookAtTold(HttpContext context, RequestDelegate next)
    {
        if (context.Features.Get<IStatusCodeReExecuteFeature>() is not null || context.Features.Get<IExceptionHandlerFeature>() is not null)
        {
            context.Request.Method = HttpMethods.Get;
        }

        return next(context);
    }
}
