using System.Net;
using System.Text;
using System.Text.Json;
using BoothWatch.Service.Access;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Access;

/// <summary>Every address that changes something, over the whole service as it is put together.</summary>
public sealed class ChangeGuardTests
{
    private const string Body = """{ "piece": "side table" }""";

    /// <summary>What changes something without a session: the sign-in itself, and the token of a message.</summary>
    private static readonly string[] WithoutSession = ["POST /api/sign-in", "POST /api/sign-out", "POST /api/alerts/acknowledge"];

    [Fact]
    public async Task EveryChange_WithoutASession_IsRefused_FromHereAndFromAfar()
    {
        await using JobHost host = await JobHost.StartSignedOut("winch gravel plum teapot", ("access:reading", "open"));
        (HttpMethod Method, string Address)[] changes = [.. Changes(host)];
        Assert.Contains((HttpMethod.Post, "/api/jobs/1/coats"), changes);
        Assert.Contains((HttpMethod.Post, "/api/piece-temperature"), changes);
        foreach ((HttpMethod method, string address) in changes.Where(change => !WithoutSession.Contains($"{change.Method} {change.Address}")))
        {
            foreach (string? from in new[] { null, SeemsFrom.Afar })
            {
                using HttpResponseMessage answer = await host.Send(method, address, request => AsOwnPage(request, from));
                Assert.True(answer.StatusCode == HttpStatusCode.Unauthorized, $"{method} {address} from {from ?? "here"} is answered {answer.StatusCode}");
                Assert.NotEmpty(answer.Headers.WwwAuthenticate);
            }
        }
    }

    [Fact]
    public async Task EveryChange_CarriesTheMarkThatDocumentsIt()
    {
        await using JobHost host = await JobHost.StartSignedOut(null);
        Assert.Empty(Unmarked(host.Services.GetRequiredService<EndpointDataSource>()));
    }

    [Fact]
    public void Mark_LeftOutOnASpecimen_IsFound()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        WebApplication app = builder.Build();
        app.MapPost("/forgotten", () => "changed");
        app.MapGet("/read", () => "read");
        app.MapDelete("/marked", () => "changed").RequireChange();
        app.MapGroup("/group").RequireChange().MapPut("/inside", () => "changed");
        Assert.Equal(["/forgotten"], Unmarked(new CompositeEndpointDataSource(((IEndpointRouteBuilder)app).DataSources)));
    }

    [Fact]
    public async Task EveryAddress_FromAfarWithoutASession_IsRefused_ButForWhatTheSignInAndAMessageNeed()
    {
        await using JobHost host = await JobHost.StartSignedOut("winch gravel plum teapot");
        List<string> open = [];
        foreach (RouteEndpoint endpoint in host.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Where(endpoint => Methods(endpoint).Contains("GET")))
        {
            using HttpResponseMessage answer = await host.Send(HttpMethod.Get, Fill(endpoint), request => request.Headers.Add(SeemsFrom.Header, SeemsFrom.Afar));
            if (answer.StatusCode != HttpStatusCode.Unauthorized)
            {
                open.Add(Fill(endpoint));
            }
        }

        // Files of the pages tell nothing of the booth; a drawing of its past does. The page of alerts is where a message's own link leads.
        Assert.DoesNotContain("/chart.svg", open);
        Assert.Equal(["/alerts", "/api/session", "/sign-in"], open.Where(address => Path.GetExtension(address) is not (".js" or ".css" or ".svg" or ".png" or ".txt" or ".webmanifest")).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("Origin", "http://elsewhere.example", 403)]
    [InlineData("Origin", "null", 403)]
    [InlineData("Origin", "https://{own}", 403)] // another scheme is another origin: RFC 6454, 4
    [InlineData("Origin", "http://{own}", 201)]
    [InlineData("Sec-Fetch-Site", "cross-site", 403)]
    [InlineData("Sec-Fetch-Site", "same-site", 403)] // another port of this machine
    [InlineData("Sec-Fetch-Site", "none", 403)]
    [InlineData("Sec-Fetch-Site", "same-origin", 201)]
    public async Task Change_AskedByAnotherSite_IsRefused_ThoughTheCookieIsSent(string header, string value, int status)
    {
        await using JobHost host = await JobHost.Start();
        string own = new Uri(host.Url).Authority;
        (int answered, JsonElement body) = await host.Post("/api/jobs", Body, change: request => request.Headers.Add(header, value.Replace("{own}", own, StringComparison.Ordinal)));
        Assert.Equal(status, answered);
        Assert.Equal(status == 201 ? 1 : 0, (await host.Get("/api/jobs")).GetProperty("total").GetInt32());
        if (status == 403)
        {
            Assert.Contains($"{header.ToLowerInvariant()} is", body.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Change_WithoutTheHeaderOfOurOwn_IsRefusedAndNamesIt()
    {
        await using JobHost host = await JobHost.Start();
        (int status, JsonElement body) = await host.Post("/api/jobs", Body, change: request => request.Headers.Remove(AccessGate.ChangeHeader));
        Assert.Equal(403, status);
        Assert.Contains(AccessGate.ChangeHeader, body.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Preflight_OfAnotherSite_IsGivenNoLeave()
    {
        await using JobHost host = await JobHost.Start();
        using HttpResponseMessage answer = await host.Send(HttpMethod.Options, "/api/jobs", request =>
        {
            request.Headers.Add("Origin", "http://elsewhere.example");
            request.Headers.Add("Access-Control-Request-Method", "POST");
            request.Headers.Add("Access-Control-Request-Headers", AccessGate.ChangeHeader);
        });
        Assert.DoesNotContain(answer.Headers, header => header.Key.StartsWith("Access-Control-Allow", StringComparison.OrdinalIgnoreCase));
    }

    private static IEnumerable<(HttpMethod Method, string Address)> Changes(JobHost host) =>
        host.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .SelectMany(endpoint => Methods(endpoint).Where(IsUnsafe).Select(method => (HttpMethod.Parse(method), Fill(endpoint))));

    private static string[] Unmarked(EndpointDataSource endpoints) =>
    [
        .. endpoints.Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => HasMethods(endpoint) && Methods(endpoint).Any(IsUnsafe) && endpoint.Metadata.GetMetadata<ChangeMark>() is null && endpoint.Metadata.GetMetadata<AnyoneMark>() is null)
            .Select(endpoint => endpoint.RoutePattern.RawText!),
    ];

    private static bool HasMethods(RouteEndpoint endpoint) => endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods.Count > 0;

    // An endpoint that names no method takes them all.
    private static string[] Methods(RouteEndpoint endpoint) =>
        HasMethods(endpoint) ? [.. endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()!.HttpMethods] : ["GET", "POST", "PUT", "PATCH", "DELETE"];

    private static bool IsUnsafe(string method) => method is not ("GET" or "HEAD" or "OPTIONS" or "TRACE");

    private static string Fill(RouteEndpoint endpoint) => "/" + string.Join('/', endpoint.RoutePattern.PathSegments.Select(segment =>
        string.Concat(segment.Parts.Select(part => part is Microsoft.AspNetCore.Routing.Patterns.RoutePatternLiteralPart literal ? literal.Content : "1"))));

    private static void AsOwnPage(HttpRequestMessage request, string? from)
    {
        request.Headers.Add(AccessGate.ChangeHeader, "1");
        request.Content = new StringContent("{}", Encoding.UTF8, "application/json");
        if (from is not null)
        {
            request.Headers.Add(SeemsFrom.Header, from);
        }
    }
}
