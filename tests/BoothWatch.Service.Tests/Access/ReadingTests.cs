using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using BoothWatch.Service.Access;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Access;

/// <summary>Who may read, over the whole service.</summary>
public sealed class ReadingTests
{
    private const string Secret = "winch gravel plum teapot";

    [Theory]
    [InlineData(null, null, "secret", 200)]
    [InlineData(null, "localhost", "secret", 200)]
    [InlineData(null, "[::1]:5080", "secret", 200)]
    [InlineData(null, "rebound.example", "secret", 403)] // DNS rebinding: a foreign name that was made to point at this machine
    [InlineData(null, "rebound.example:5080", "open", 403)]
    [InlineData(null, "localhost.rebound.example", "secret", 403)]
    [InlineData(null, "booth.example", "secret", 401)] // a name of the booth, but not of this machine alone
    [InlineData(SeemsFrom.Afar, null, "secret", 401)]
    [InlineData(SeemsFrom.Afar, null, "open", 200)]
    [InlineData(SeemsFrom.Afar, "booth.example", "open", 200)]
    [InlineData(SeemsFrom.Afar, "BOOTH.example.:443", "open", 200)]
    [InlineData(SeemsFrom.Afar, "rebound.example", "open", 403)]
    [InlineData("::1", null, "secret", 200)]
    [InlineData("::ffff:127.0.0.1", null, "secret", 200)]
    [InlineData("2001:db8::7", null, "secret", 401)]
    public async Task Caller_AskingByAName_MayReadOrNot(string? from, string? name, string reading, int status)
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret, ("access:reading", reading), ("access:hosts:0", "booth.example"));
        foreach (string address in new[] { "/api/now", "/metrics", "/api/health", "/chart.svg" })
        {
            Assert.Equal(status, await host.Status(address, request => From(request, from, name)));
        }
    }

    [Fact]
    public async Task Browser_FromAfar_IsLedToTheSignInAndBack()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        using HttpResponseMessage answer = await host.Send(HttpMethod.Get, "/jobs?id=7", request =>
        {
            From(request, SeemsFrom.Afar, null);
            request.Headers.Add("Accept", "text/html,application/xhtml+xml;q=0.9,*/*;q=0.8");
        });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/sign-in?next=%2Fjobs%3Fid%3D7", answer.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task Refusal_OfEveryKind_HasTheSafeHeadersToo()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        foreach ((string address, string? from, string? name, string accept, int status) in ((string, string?, string?, string, int)[])
            [("/api/now", SeemsFrom.Afar, null, "*/*", 401), ("/", SeemsFrom.Afar, null, "text/html", 302), ("/api/now", null, "rebound.example", "*/*", 403), ("/sign-in", SeemsFrom.Afar, null, "text/html", 200)])
        {
            using HttpResponseMessage answer = await host.Send(HttpMethod.Get, address, request =>
            {
                From(request, from, name);
                request.Headers.Add("Accept", accept);
            });
            Assert.Equal(status, (int)answer.StatusCode);
            string policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
            Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self'; ", policy, StringComparison.Ordinal);
            Assert.EndsWith("form-action 'none'; frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
            Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
            Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Opener-Policy")));
            Assert.Contains("camera=()", Assert.Single(answer.Headers.GetValues("Permissions-Policy")), StringComparison.Ordinal);
            Assert.False(answer.Headers.Contains("Strict-Transport-Security")); // over TLS only
            Assert.True(answer.Headers.CacheControl?.NoStore);
        }
    }

    [Fact]
    public async Task Streams_FromOneAddressAfar_AreFew_AndOthersStillGetTheirs()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret, ("access:reading", "open"));
        using HttpClient http = new();
        List<HttpResponseMessage> streams = [];
        try
        {
            for (int i = 0; i < RequestLimits.Streams; i++)
            {
                streams.Add(await Stream(http, host, SeemsFrom.Afar));
                Assert.Equal(HttpStatusCode.OK, streams[^1].StatusCode);
            }

            using HttpResponseMessage one = await Stream(http, host, SeemsFrom.Afar);
            Assert.Equal(HttpStatusCode.TooManyRequests, one.StatusCode);
            Assert.NotNull(one.Headers.RetryAfter);
            streams.Add(await Stream(http, host, "192.0.2.8"));
            streams.Add(await Stream(http, host, "127.0.0.1"));
            Assert.All(streams, stream => Assert.Equal(HttpStatusCode.OK, stream.StatusCode));
        }
        finally
        {
            streams.ForEach(stream => stream.Dispose());
        }
    }

    [Fact]
    public async Task Changes_TooManyAMinute_ArePutOff_AndReadingGoesOn()
    {
        await using JobHost host = await JobHost.Start();
        int status = 0;
        for (int i = 0; i <= RequestLimits.Changes && status != 429; i++)
        {
            status = (await host.Post("/api/jobs/1/finish", "{}")).Status;
        }

        Assert.Equal(429, status);
        Assert.Equal(200, await host.Status("/api/now"));
    }

    [Theory]
    [InlineData("192.0.2.200", "198.51.100.9", "booth.example", 401)] // a proxy, for somebody afar
    [InlineData("192.0.2.200", "127.0.0.1", "localhost", 401)] // whatever it says, nobody behind it is this machine
    [InlineData("192.0.2.200", null, "localhost", 401)]
    [InlineData("198.51.100.9", "127.0.0.1", "localhost", 401)] // somebody who only pretends to be a proxy
    public async Task Proxy_Configured_IsBelieved_AndNobodyElse(string from, string? forwardedFor, string name, int status)
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret, ("access:proxies:0", "192.0.2.192/26"), ("access:hosts:0", "booth.example"));
        Assert.Equal(status, await host.Status("/api/now", request =>
        {
            From(request, from, name);
            if (forwardedFor is not null)
            {
                request.Headers.Add("X-Forwarded-For", forwardedFor);
            }
        }));
    }

    [Fact]
    public async Task Proxy_OverTls_GetsTheCookieOfTls_AndItsCallersAreLimitedByTheirOwnAddress()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret, ("access:proxies:0", "192.0.2.200"), ("access:hosts:0", "booth.example"));
        for (int caller = 1; caller <= RequestLimits.SignIns + 1; caller++)
        {
            (int status, _) = await host.Post("/api/sign-in", $$"""{ "secret": "{{Secret}}" }""", change: request =>
            {
                From(request, "192.0.2.200", "127.0.0.1");
                request.Headers.Add("X-Forwarded-For", $"198.51.100.{caller}");
                request.Headers.Add("X-Forwarded-Proto", "https");
                request.Headers.Add("X-Forwarded-Host", "booth.example");
                request.Headers.Add("Origin", "https://booth.example");
            });
            Assert.Equal(200, status);
        }
    }

    [Fact]
    public async Task Page_OverARealNetworkAddress_IsAfar()
    {
        IPAddress? own = NetworkInterface.GetAllNetworkInterfaces()
            .Where(card => card.OperationalStatus == OperationalStatus.Up && card.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .SelectMany(card => card.GetIPProperties().UnicastAddresses)
            .Select(unicast => unicast.Address)
            .FirstOrDefault(address => address.AddressFamily == AddressFamily.InterNetwork);
        if (own is null)
        {
            return; // a machine without a network has nothing afar
        }

        await using JobHost host = await JobHost.StartSignedOut(Secret, ("page:url", $"http://{own}:0"));
        Assert.Equal(401, await host.Status("/api/now"));
        Assert.Equal(200, (await host.Post("/api/sign-in", $$"""{ "secret": "{{Secret}}" }""")).Status);
        Assert.Equal(200, await host.Status("/api/now"));
        Assert.Equal(201, (await host.Post("/api/jobs", """{ "piece": "side table" }""")).Status);
    }

    [Theory]
    [InlineData("http://0.0.0.0:0", null, "secret", "set one as the user that runs BoothWatch with 'access set-secret', or set access:reading to open")]
    [InlineData("http://[::]:0", null, "secret", "no secret is set")]
    [InlineData("http://0.0.0.0:0", "garbage", "secret", "does not hold the hash of a secret")]
    [InlineData("http://0.0.0.0:0", null, "open", null)]
    [InlineData("http://127.0.0.1:0", null, "secret", null)]
    public async Task Start_BeyondThisMachineWithoutASecret_IsRefusedWithTheSettingAndTheFix(string url, string? secret, string reading, string? says)
    {
        string folder = Directory.CreateTempSubdirectory("boothwatch-start-").FullName;
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["page:url"] = url, ["series:folder"] = folder, ["access:reading"] = reading, ["logging:level"] = "error" }).Build();
        AccessFolder access = AccessFolder.Of(configuration);
        if (secret is not null)
        {
            Directory.CreateDirectory(access.Path);
            await File.WriteAllTextAsync(access.SecretFile, secret);
        }

        await using Microsoft.AspNetCore.Builder.WebApplication app = BoothHost.Build(new ConfigurationFile(null, configuration, []));
        if (says is null)
        {
            await app.StartAsync();
            await app.StopAsync();
        }
        else
        {
            OptionsValidationException refusal = await Assert.ThrowsAsync<OptionsValidationException>(() => app.StartAsync());
            Assert.Contains(says, Assert.Single(refusal.Failures), StringComparison.Ordinal);
        }

        Directory.Delete(folder, recursive: true);
    }

    private static Task<HttpResponseMessage> Stream(HttpClient http, JobHost host, string from)
    {
        HttpRequestMessage request = new(HttpMethod.Get, host.Url + "/api/events");
        request.Headers.Add(SeemsFrom.Header, from);
        return http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
    }

    private static void From(HttpRequestMessage request, string? from, string? name)
    {
        request.Headers.Host = name;
        if (from is not null)
        {
            request.Headers.Add(SeemsFrom.Header, from);
        }
    }
}
