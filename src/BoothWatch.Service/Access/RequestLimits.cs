using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.RateLimiting;

namespace BoothWatch.Service.Access;

/// <summary>How often one address may ask. Nothing here locks anybody out for longer than a minute, and who is signed in stays so.</summary>
internal static class RequestLimits
{
    /// <summary>Tries to sign in, a minute and address.</summary>
    public const int SignIns = 10;

    /// <summary>Changes, a minute and address.</summary>
    public const int Changes = 120;

    /// <summary>Other requests from another machine, a minute and address. A page takes about twelve.</summary>
    public const int Readings = 1200;

    /// <summary>Streams at once from an address of another machine. All together are bounded where they are served.</summary>
    public const int Streams = 16;

    private const string StreamPolicy = "streams";
    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan StreamRetry = TimeSpan.FromSeconds(10);

    /// <summary>Adds the limits.</summary>
    public static IServiceCollection AddRequestLimits(this IServiceCollection services) => services.AddRateLimiter(limits =>
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => PartitionOf(context));
        limits.AddPolicy(StreamPolicy, context => IsLocal(context)
            ? RateLimitPartition.GetNoLimiter("here")
            : RateLimitPartition.GetConcurrencyLimiter(Callers.Key(context), _ => new ConcurrencyLimiterOptions { PermitLimit = Streams, QueueLimit = 0 }));
        limits.OnRejected = (rejected, _) => new ValueTask(Refuse(rejected).ExecuteAsync(rejected.HttpContext));
    });

    /// <summary>Says that an endpoint keeps its connection: few at once from an address of another machine, and not beyond the session that it needs.</summary>
    internal static TBuilder LimitStreams<TBuilder>(this TBuilder endpoints)
        where TBuilder : IEndpointConventionBuilder => endpoints.WithMetadata(new StreamMark()).RequireRateLimiting(StreamPolicy);

    private static RateLimitPartition<string> PartitionOf(HttpContext context)
    {
        string key = Callers.Key(context);
        return context.GetEndpoint()?.Metadata.GetMetadata<SignInMark>() is not null ? Fixed("sign-in " + key, SignIns)
            : AccessGate.IsChange(context) ? Fixed("change " + key, Changes)
            : IsLocal(context) ? RateLimitPartition.GetNoLimiter("here")
            : Fixed("read " + key, Readings);
    }

    private static RateLimitPartition<string> Fixed(string key, int permits) => RateLimitPartition.GetFixedWindowLimiter(
        key, _ => new FixedWindowRateLimiterOptions { PermitLimit = permits, Window = Window, QueueLimit = 0 });

    private static bool IsLocal(HttpContext context) => context.RequestServices.GetRequiredService<Callers>().IsLocal(context);

    private static ProblemHttpResult Refuse(OnRejectedContext rejected)
    {
        TimeSpan wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out TimeSpan left) ? left : StreamRetry;
        string seconds = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);
        rejected.HttpContext.Response.Headers.RetryAfter = seconds;
        return TypedResults.Problem(
            title: "Too many requests", detail: $"this address asks too often, or follows the booth too many times at once; try again in {seconds} s",
            statusCode: StatusCodes.Status429TooManyRequests);
    }
}
