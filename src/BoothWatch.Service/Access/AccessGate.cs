using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Access;

/// <summary>
/// Stands before every address: the name asked for must be one of the booth's, reading from another machine needs a session unless it
/// is open, and every change needs a session and must be asked by the own page.
/// </summary>
/// <remarks>
/// Against a change asked by another site (CSRF) stand a strict check of Origin and Sec-Fetch-Site, a header of our own that no other
/// site may send without leave, and SameSite=Strict on the cookie. They need no state, hold for scripts as for pages, and cannot be
/// forgotten in a form, as a token can.
/// </remarks>
internal sealed class AccessGate(HostNames hosts, Callers callers, SessionStore sessions, SharedSecret secret, IOptions<AccessOptions> options, TimeProvider time)
{
    /// <summary>The header that a change carries, whatever its value.</summary>
    public const string ChangeHeader = "X-BoothWatch-Change";

    /// <summary>Address of the page to sign in.</summary>
    public const string SignInPage = "/sign-in";

    /// <summary>How soon a stream ends after its session.</summary>
    public static readonly TimeSpan StreamCheck = TimeSpan.FromSeconds(10);

    /// <summary>Whether a request asks for a change. Safe methods after RFC 9110, 9.2.1.</summary>
    public static bool IsChange(HttpContext context)
    {
        Endpoint? endpoint = context.GetEndpoint();
        bool isUnsafe = endpoint is RouteEndpoint
            && !HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method)
            && !HttpMethods.IsOptions(context.Request.Method) && !HttpMethods.IsTrace(context.Request.Method);
        return isUnsafe || endpoint?.Metadata.GetMetadata<ChangeMark>() is not null;
    }

    /// <summary>Lets a request through, or answers it.</summary>
    public async Task Invoke(HttpContext context, RequestDelegate next)
    {
        HttpRequest request = context.Request;
        bool isLocal = callers.IsLocal(context);
        Session? session = UseSession(context, isLocal);
        bool isForAnyone = context.GetEndpoint()?.Metadata.GetMetadata<AnyoneMark>() is not null;
        ChangeMark? mark = context.GetEndpoint()?.Metadata.GetMetadata<ChangeMark>();
        bool isChange = IsChange(context) && (mark is not null || !isForAnyone);
        bool mayRead = isLocal || isForAnyone || session is not null || options.Value.Reading == ReadingAccess.Open;

        IResult? refusal =
            !hosts.Knows(request.Host.Host) ? OfHost(request.Host.Host)
            : isChange && OfForeign(request) is { } foreign ? foreign
            : !mayRead && IsNavigation(request) ? TypedResults.Redirect($"{SignInPage}?next={Uri.EscapeDataString(request.Path + request.QueryString)}")
            : !mayRead || (isChange && !isForAnyone && session is null) ? OfSession(context, isLocal)
            : isChange && mark is { JsonOnly: true } && !request.HasJsonContentType() ? OfType(request)
            : null;
        if (refusal is not null)
        {
            await refusal.ExecuteAsync(context);
            return;
        }

        bool hangsOnSession = !isLocal && options.Value.Reading == ReadingAccess.Secret && context.GetEndpoint()?.Metadata.GetMetadata<StreamMark>() is not null;
        await using ITimer? watch = hangsOnSession ? time.CreateTimer(_ => EndWithoutSession(context), null, StreamCheck, StreamCheck) : null;
        await next(context);
    }

    /// <summary>The session that a request brings. One that began without a secret holds for this machine only.</summary>
    public Session? UseSession(HttpContext context, bool isLocal) =>
        SessionCookie.Read(context.Request) is { } token && (isLocal || !secret.State.IsNone) ? sessions.Use(token) : null;

    // A stream is one long request: it counts as use of its session, and ends with it.
    private void EndWithoutSession(HttpContext context)
    {
        if (UseSession(context, isLocal: false) is null)
        {
            context.Abort();
        }
    }

    private static bool IsNavigation(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) && request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);

    private static ProblemHttpResult OfHost(string host) => Refuse(StatusCodes.Status403Forbidden, "Not a name of this booth",
        $"the page was asked for as \"{host}\"; open it by its address, or add the name to access:hosts");

    private static ProblemHttpResult? OfForeign(HttpRequest request)
    {
        string own = $"{request.Scheme}://{request.Host}";
        if (request.Headers.Origin is [{ Length: > 0 } origin] && !origin.Equals(own, StringComparison.OrdinalIgnoreCase))
        {
            return Refuse(StatusCodes.Status403Forbidden, "Changes from the own page only",
                $"origin is {origin}, the page is {own}; changes are made from the page of BoothWatch itself. Behind a proxy, set access:proxies");
        }

        if (request.Headers["Sec-Fetch-Site"] is [{ Length: > 0 } site] && site != "same-origin")
        {
            return Refuse(StatusCodes.Status403Forbidden, "Changes from the own page only",
                $"sec-fetch-site is {site}; changes are made from the page of BoothWatch itself");
        }

        return request.Headers.ContainsKey(ChangeHeader)
            ? null
            : Refuse(StatusCodes.Status403Forbidden, "Changes from the own page only", $"the header {ChangeHeader} is missing; send it with any value, for example 1");
    }

    private ProblemHttpResult OfSession(HttpContext context, bool isLocal)
    {
        // RFC 9110, 15.5.2: the answer names how to authenticate.
        context.Response.Headers.WWWAuthenticate = $"BoothWatch page=\"{SignInPage}\"";
        string detail = secret.State switch
        {
            { IsNone: false } => $"this needs a signed-in session; sign in at {SignInPage}",
            _ when isLocal => "this needs a signed-in session; open the link that BoothWatch printed at its start, or set a secret with 'access set-secret'",
            _ => "this needs a signed-in session, and no secret is set; set one on the machine of the booth with 'access set-secret'",
        };
        return TypedResults.Problem(
            title: "Sign in first", detail: detail, statusCode: StatusCodes.Status401Unauthorized,
            extensions: new Dictionary<string, object?> { ["signIn"] = SignInPage });
    }

    private static ProblemHttpResult OfType(HttpRequest request) => Refuse(StatusCodes.Status415UnsupportedMediaType, "JSON only",
        $"content-type is {(string.IsNullOrEmpty(request.ContentType) ? "missing" : request.ContentType)}; give application/json, {{}} where there is nothing to say");

    private static ProblemHttpResult Refuse(int status, string title, string detail) => TypedResults.Problem(title: title, detail: detail, statusCode: status);
}
