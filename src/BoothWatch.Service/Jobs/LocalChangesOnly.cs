using BoothWatch.Service.Page;
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
        if (!LocalCaller.Made(context.HttpContext))
        {
            return Refuse(StatusCodes.Status403Forbidden, "Changes from this machine only",
                $"jobs are changed from the machine that BoothWatch runs on, for there is no sign-in yet; this request came from {context.HttpContext.Connection.RemoteIpAddress} for {request.Host.Host}, or through a proxy. Open the page there, or tunnel to it with ssh -L");
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

    private static ProblemHttpResult Refuse(int status, string title, string detail) => TypedResults.Problem(title: title, detail: detail, statusCode: status);
}
