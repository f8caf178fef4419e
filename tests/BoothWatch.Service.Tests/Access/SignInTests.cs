using System.Net;
using System.Text.Json;
using BoothWatch.Service.Access;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Access;

/// <summary>Signing in and out over the whole service.</summary>
public sealed class SignInTests
{
    private const string Secret = "winch gravel plum teapot";
    private static readonly string SignIn = $$"""{ "secret": "{{Secret}}" }""";

    [Fact]
    public async Task Secret_FromAfar_ReadsAndChanges_UntilSignedOut()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        Assert.Equal(401, await host.Status("/api/now", Afar));
        (int status, JsonElement session) = await host.Post("/api/sign-in", SignIn, change: Afar);
        Assert.Equal(200, status);
        Assert.True(session.GetProperty("signedIn").GetBoolean());
        Assert.Equal(200, await host.Status("/api/now", Afar));
        Assert.Equal(201, (await host.Post("/api/jobs", """{ "piece": "side table" }""", change: Afar)).Status);

        (status, session) = await host.Post("/api/sign-out", "{}", change: Afar);
        Assert.Equal((200, false), (status, session.GetProperty("signedIn").GetBoolean()));
        Assert.Equal(401, await host.Status("/api/now", Afar));
    }

    [Fact]
    public async Task SignOut_EndsTheSessionOnTheServer_NotOnlyTheCookie()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        string cookie = await Cookie(host);
        Assert.Equal(200, await host.Status("/api/now", request => Bring(request, cookie)));
        await host.Post("/api/sign-out", "{}", change: request => Bring(request, cookie));
        Assert.Equal(401, await host.Status("/api/now", request => Bring(request, cookie)));
    }

    [Theory]
    [InlineData("""{ "secret": "winch gravel plum teapoT" }""", 401)]
    [InlineData("""{ "secret": "" }""", 401)]
    [InlineData("""{ "secret": "\ud800" }""", 400)]
    [InlineData("""{ "secret": 7 }""", 400)]
    [InlineData("""{ "password": "winch gravel plum teapot" }""", 400)]
    [InlineData("[", 400)]
    public async Task Secret_WrongOrMalformed_IsRefused(string body, int status)
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        Assert.Equal(status, (await host.Post("/api/sign-in", body, change: Afar)).Status);
        Assert.Equal(401, await host.Status("/api/now", Afar));
    }

    [Fact]
    public async Task Secret_GuessedTooOften_IsPutOffBriefly_ForThatAddressAlone_AndWhoIsSignedInStaysSo()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        string tablet = await Cookie(host); // one of the tries of this address
        for (int i = 1; i < RequestLimits.SignIns; i++)
        {
            Assert.Equal(401, (await host.Post("/api/sign-in", """{ "secret": "a wrong one" }""", change: Afar)).Status);
        }

        using HttpResponseMessage put = await Try(host, Afar);
        Assert.Equal(HttpStatusCode.TooManyRequests, put.StatusCode);
        Assert.InRange(put.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 60);
        Assert.Contains("try again in", await put.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        using HttpResponseMessage neighbour = await Try(host, request => request.Headers.Add(SeemsFrom.Header, "192.0.2.8"));
        Assert.Equal(HttpStatusCode.OK, neighbour.StatusCode);
        Assert.Equal(200, await host.Status("/api/now", request => Bring(request, tablet)));
        Assert.Equal(201, (await host.Post("/api/jobs", """{ "piece": "side table" }""", change: request => Bring(request, tablet))).Status);
    }

    [Fact]
    public async Task Change_OfTheSecret_EndsEverySession_WithoutARestart()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        string cookie = await Cookie(host);
        JobHost.SetSecret(host.Services.GetRequiredService<AccessFolder>(), "another four words here");
        Assert.Equal(401, await host.Status("/api/now", request => Bring(request, cookie)));
        Assert.Equal(401, (await host.Post("/api/sign-in", SignIn, change: Afar)).Status);
        Assert.Equal(200, (await host.Post("/api/sign-in", """{ "secret": "another four words here" }""", change: Afar)).Status);
    }

    [Fact]
    public async Task StartCode_IsGoodOnce_AndOnThisMachineAlone()
    {
        await using JobHost host = await JobHost.StartSignedOut(null);
        string code = host.Services.GetRequiredService<StartCode>().Current;
        string body = $$"""{ "secret": "{{code.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal)}}" }""";

        Assert.Equal(403, (await host.Post("/api/sign-in", body, change: Afar)).Status);
        Assert.Equal(401, (await host.Post("/api/sign-in", """{ "secret": "AAAA-AAAA-AAAA" }""")).Status);
        using HttpResponseMessage signedIn = await Try(host, _ => { }, code);
        string cookie = signedIn.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        Assert.Equal(401, (await host.Post("/api/sign-in", body)).Status);
        Assert.NotEqual(code, host.Services.GetRequiredService<StartCode>().Current);

        // The session that began with it is worth nothing from elsewhere, and ends when a secret is set.
        Assert.Equal(201, (await host.Post("/api/jobs", """{ "piece": "side table" }""", change: request => request.Headers.Add("Cookie", cookie))).Status);
        Assert.Equal(401, (await host.Post("/api/jobs", """{ "piece": "side table" }""", change: request => Bring(request, cookie))).Status);
        JobHost.SetSecret(host.Services.GetRequiredService<AccessFolder>(), Secret);
        Assert.Equal(401, (await host.Post("/api/jobs", """{ "piece": "side table" }""", change: request => request.Headers.Add("Cookie", cookie))).Status);
    }

    [Fact]
    public async Task SignIn_AskedByAnotherSite_IsRefused()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        Assert.Equal(403, (await host.Post("/api/sign-in", SignIn, change: request => request.Headers.Add("Origin", "http://elsewhere.example"))).Status);
        Assert.Equal(403, (await host.Post("/api/sign-in", SignIn, change: request => request.Headers.Remove(AccessGate.ChangeHeader))).Status);
        Assert.Equal(403, (await host.Post("/api/sign-in", SignIn, change: request => request.Headers.Host = "rebound.example")).Status);
    }

    [Fact]
    public async Task Secret_ThatCannotBeRead_LetsNobodyIn()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        string cookie = await Cookie(host);
        await File.WriteAllTextAsync(host.Services.GetRequiredService<AccessFolder>().SecretFile, "garbage");
        Assert.Equal(401, await host.Status("/api/now", request => Bring(request, cookie)));
        Assert.Equal(503, (await host.Post("/api/sign-in", SignIn)).Status);
        Assert.Equal(200, await host.Status("/api/now"));
    }

    [Theory]
    [InlineData("secret", null, "secret", true)]
    [InlineData("secret", SeemsFrom.Afar, "secret", false)]
    [InlineData("open", SeemsFrom.Afar, "secret", true)]
    public async Task Session_Asked_SaysWhatASignInTakes(string reading, string? from, string with, bool mayRead)
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret, ("access:reading", reading));
        using HttpResponseMessage answer = await host.Send(HttpMethod.Get, "/api/session", request =>
        {
            if (from is not null)
            {
                request.Headers.Add(SeemsFrom.Header, from);
            }
        });
        JsonElement session = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal((false, with, mayRead), (session.GetProperty("signedIn").GetBoolean(), session.GetProperty("signInWith").GetString()!, session.GetProperty("mayRead").GetBoolean()));
    }

    private static void Afar(HttpRequestMessage request) => request.Headers.Add(SeemsFrom.Header, SeemsFrom.Afar);

    private static void Bring(HttpRequestMessage request, string cookie)
    {
        Afar(request);
        request.Headers.Add("Cookie", cookie);
    }

    private static async Task<string> Cookie(JobHost host)
    {
        using HttpResponseMessage answer = await Try(host, Afar);
        return answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
    }

    // With a client of its own, so that no cookie jar joins in.
    private static async Task<HttpResponseMessage> Try(JobHost host, Action<HttpRequestMessage> change, string secret = Secret)
    {
        using HttpClient http = new(new SocketsHttpHandler { UseCookies = false });
        using HttpRequestMessage request = new(HttpMethod.Post, host.Url + "/api/sign-in")
        {
            Content = new StringContent(JsonSerializer.Serialize(new { secret }), System.Text.Encoding.UTF8, "application/json"),
        };
        request.Headers.Add(AccessGate.ChangeHeader, "1");
        change(request);
        return await http.SendAsync(request);
    }
}
