namespace LabPipeline.Board.Serving;

/// <summary>What every answer tells the browser: scripts and styles from this board alone, none inside a page, no frame, nothing kept.</summary>
internal static class SecurityHeaders
{
    // The hash is that of no text at all: the chart library makes one empty style element and fills it by script. An inline style with a text stays refused.
    private const string EmptyStyle = "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='";

    // Default-src covers scripts and connections; those behind it are not covered by it. A chart saved as a picture is a data: image.
    private const string ContentPolicy =
        $"default-src 'self'; style-src 'self' {EmptyStyle}; img-src 'self' data:; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private const string OneYear = "max-age=31536000";

    public static void UseSecurityHeaders(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        // An exception clears the headers set so far, so they are set when the answer starts.
        context.Response.OnStarting(() =>
        {
            Set(context.Response.Headers, context.Request.IsHttps);
            return Task.CompletedTask;
        });
        return next(context);
    });

    /// <summary>The board's own files may be kept and must be asked for again; pages may not be kept.</summary>
    public static void AllowKeeping(HttpResponse response) => response.Headers.CacheControl = "no-cache";

    private static void Set(IHeaderDictionary headers, bool isTls)
    {
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        if (headers.CacheControl.Count == 0 || !headers.ContainsKey("ETag"))
        {
            headers.CacheControl = "no-store";
        }

        if (isTls)
        {
            headers.StrictTransportSecurity = OneYear;
        }
    }
}
