namespace LabPipeline.Board.Serving;

/// <summary>What every answer tells the browser: nothing from elsewhere, no script, no frame, nothing kept.</summary>
internal static class SecurityHeaders
{
    // Default-src covers scripts and styles; the others are not covered by it.
    private const string ContentPolicy = "default-src 'self'; script-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    public static void UseSecurityHeaders(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        // An exception clears the headers set so far, so they are set when the answer starts.
        context.Response.OnStarting(() =>
        {
            Set(context.Response.Headers);
            return Task.CompletedTask;
        });
        return next(context);
    });

    private static void Set(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers.CacheControl = "no-store";
    }
}
