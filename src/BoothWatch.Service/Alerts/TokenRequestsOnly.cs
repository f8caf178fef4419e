namespace BoothWatch.Service.Alerts;

/// <summary>
/// The guard of the one change that needs no sign-in: a token from a message acknowledges its own alert from anywhere, and nothing else.
/// JSON alone is taken, which a form of another site cannot send, and a short body.
/// </summary>
internal sealed class TokenRequestsOnly : IEndpointFilter
{
    private const int LongestBody = 1024;

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        HttpRequest request = context.HttpContext.Request;
        if (!request.HasJsonContentType())
        {
            return TypedResults.Problem(title: "JSON only", detail: "send application/json", statusCode: StatusCodes.Status415UnsupportedMediaType);
        }

        return request.ContentLength is > LongestBody or null
            ? TypedResults.Problem(title: "Too long", detail: $"send at most {LongestBody} bytes, and say how many", statusCode: StatusCodes.Status413PayloadTooLarge)
            : await next(context);
    }
}
