using System.Net;
using Microsoft.AspNetCore.Http.HttpResults;

namespace BoothWatch.Service.Jobs;

/// <summary>
/// Guards what changes jobs while there is no sign-in: JSON only, from this machine only. The type of the content and the host name
/// keep pages from elsewhere out that run in a browser on this machine.
/// </summary>
internal sealed class LocalChangesOnly : IEndpointFilter
{
    /// <inheritdoc/>
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        HttpRequest request = context.HttpContext.Request;
        IPAddress? from = context.HttpContext.Connection.RemoteIpAddress;
        if (from is null || !IPAddress.IsLoopback(from.IsIPv4MappedToIPv6 ? from.MapToIPv4() : from))
        {
            return Refuse(StatusCodes.Status403Forbidden, "Changes from this machine only",
                $"jobs are changed from the machine that BoothWatch runs on, for there is no sign-in yet; this request came from {from}. Open the page there, or tunnel to it with ssh -L");
        }

        if (!IsLocal(request.Host.Host))
        {
            return Refuse(StatusCodes.Status403Forbidden, "Changes under a local name only",
                $"host is {request.Host.Host}; ask for localhost, 127.0.0.1 or [::1]");
        }

        if (request.Headers.Origin is [{ Length: > 0 } origin] && !(Uri.TryCreate(origin, UriKind.Absolute, out Uri? page) && page.Authority == request.Host.Value))
        {
            return Refuse(StatusCodes.Status403Forbidden, "Changes from the own page only", $"origin is {origin}; jobs are changed from the page of BoothWatch itself");
        }

        if (request.HasJsonContentType())
        {
            return await next(context);
        }

        return Refuse(StatusCodes.Status415UnsupportedMediaType, "JSON only",
                $"content-type is {(string.IsNullOrEmpty(request.ContentType) ? "missing" : request.ContentType)}; send application/json, {{}} where there is nothing to say");
    }

    private static bool IsLocal(string host) =>
        string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? ip) && IPAddress.IsLoopback(ip));

    private static ProblemHttpResult Refuse(int status, string title, string detail) => TypedResults.Problem(title: title, detail: detail, statusCode: status);
}
