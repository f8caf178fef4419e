using System.Net;
using System.Net.Http.Headers;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>What the channels over HTTP have in common.</summary>
internal static class HttpDelivery
{
    /// <summary>What follows no redirect and keeps no cookie.</summary>
    public static SocketsHttpHandler Handler() => new()
    {
        AllowAutoRedirect = false,
        UseCookies = false,
        ConnectTimeout = TimeSpan.FromSeconds(5),
        PooledConnectionLifetime = TimeSpan.FromMinutes(5),
    };

    /// <summary>A client over it; who uses it sets the limits of time.</summary>
    public static HttpClient Client(HttpMessageHandler? handler = null) => new(handler ?? Handler())
    {
        Timeout = Timeout.InfiniteTimeSpan,
        MaxResponseContentBufferSize = 64 * 1024,
    };

    /// <summary>An error of the connection. It may have arrived unless the connection never stood.</summary>
    public static AlertDeliveryException Of(HttpRequestException error, string who) => new($"{who}: {error.InnerException?.Message ?? error.Message}", error)
    {
        MayHaveArrived = error.HttpRequestError is not (HttpRequestError.ConnectionError or HttpRequestError.NameResolutionError
            or HttpRequestError.SecureConnectionError or HttpRequestError.ProxyTunnelError),
    };

    /// <summary>When a receiver wants to be asked again; null when it did not say.</summary>
    public static TimeSpan? RetryAfter(HttpResponseHeaders headers, DateTimeOffset now) => headers.RetryAfter switch
    {
        { Delta: { } delta } => delta,
        { Date: { } date } => date - now,
        _ => null,
    };

    /// <summary>A status as people write it.</summary>
    public static string Words(HttpStatusCode status) => FormattableString.Invariant($"{(int)status} {status}");
}
