namespace BoothWatch.Service.Page;

/// <summary>Headers of every answer: nothing from elsewhere, nothing inline, nothing kept but what says so, not to be framed.</summary>
internal static class PageHeaders
{
    private const string PagePolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    public static Task Add(HttpContext context, RequestDelegate next)
    {
        // At the last moment, so that the answer to a failure carries them too.
        context.Response.OnStarting(() =>
        {
            IHeaderDictionary headers = context.Response.Headers;
            headers.ContentSecurityPolicy = PagePolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=()";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers.CacheControl = headers.CacheControl is [{ Length: > 0 } own] && context.Response.StatusCode < 400 ? own : "no-store";
            return Task.CompletedTask;
        });
        return next(context);
    }
}
