namespace BoothWatch.Service.Access;

/// <summary>
/// The cookie that carries the token of a session: for this host alone, not to be read by scripts, not sent with what another site
/// asks for (SameSite=Strict), and over TLS bound to it by the prefix <c>__Host-</c> (RFC 6265bis, 4.1.3.2).
/// </summary>
internal static class SessionCookie
{
    private const string PlainName = "boothwatch";
    private const string TlsName = "__Host-boothwatch";

    public static string? Read(HttpRequest request) => request.Cookies[NameOf(request)];

    public static void Write(HttpContext context, string token, TimeSpan longest) =>
        context.Response.Cookies.Append(NameOf(context.Request), token, Options(context.Request, longest));

    public static void Remove(HttpContext context) =>
        context.Response.Cookies.Delete(NameOf(context.Request), Options(context.Request, null));

    private static string NameOf(HttpRequest request) => request.IsHttps ? TlsName : PlainName;

    private static CookieOptions Options(HttpRequest request, TimeSpan? longest) => new()
    {
        HttpOnly = true,
        IsEssential = true,
        MaxAge = longest,
        Path = "/",
        SameSite = SameSiteMode.Strict,
        Secure = request.IsHttps,
    };
}
