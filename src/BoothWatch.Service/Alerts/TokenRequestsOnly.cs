namespace BoothWatch.Service.Alerts;

/// <summary>
/// The guard of the one change that needs no sign-in: a token from a message acknowledges its own alert from anywhere, and nothing else.
/// The gate sees to it that the own page asks, in JSON; this, that the body is short.
/// </summary>
internal sealed class TokenRequestsOnly : IEndpointFilter
{
    private const int LongestBody = 1024;

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        return context.HttpContext.Request.ContentLength is > LongestBody or null
            ? TypedResults.Problem(title: "Too long", detail: $"send at most {LongestBody} bytes, and say how many", statusCode: StatusCodes.Status413PayloadTooLarge)
            : await next(context);
    }
}
