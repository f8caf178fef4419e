using System.Net;

namespace BoothWatch.Service.Access;

/// <summary>Headers of every answer: nothing from elsewhere, nothing inline, nothing cached unless an address says so, not to be framed.</summary>
internal static class ResponseHeaders
{
    private const string PagePolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; "
        + "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    // 30 days: a shop that loses its certificate gets at its page again within a month.
    private const string HttpsOnly = "max-age=2592000";

    public static Task Add(HttpContext context, RequestDelegate next)
    {
        // At the last moment, so that the answer to a failure carries them too.
        context.Response.OnStarting(() =>
        {
            IHeaderDictionary headers = context.Response.Headers;
            headers.ContentSecurityPolicy = PagePolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(), payment=(), usb=()";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers.CacheControl = headers.CacheControl is [{ Length: > 0 } own] && context.Response.StatusCode < 400 ? own : "no-store";

            // RFC 6797, 7.2 and 8.1.1: over TLS only, and of no meaning for an address.
            if (context.Request.IsHttps && !IPAddress.TryParse(context.Request.Host.Host.Trim('[', ']'), out _))
            {
                headers.StrictTransportSecurity = HttpsOnly;
            }

            return Task.CompletedTask;
        });
        return next(context);
    }
}
