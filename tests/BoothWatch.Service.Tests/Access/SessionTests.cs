using System.Net;
using System.Runtime.Versioning;
using System.Text;
using BoothWatch.Service.Access;
using BoothWatch.Service.Page;
using BoothWatch.Service.Tests.Page;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Access;

/// <summary>How long a session holds, and what its cookie is like.</summary>
[UnsupportedOSPlatform("windows")] // file modes
public sealed class SessionTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-sessions-").FullName;
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 6, 3, 12, 0, 0, TimeSpan.Zero));

    private AccessFolder Folder => new(Path.Combine(_folder, "access"));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Session_Unused_EndsAfterItsIdleTime_OverTheServer()
    {
        await using ShopPage shop = await ShopPage.Start(time: _time, sources: Typed, settings: ("access:sessionIdleH", "2"));
        string cookie = shop.SignIn();
        _time.Advance(TimeSpan.FromMinutes(119));
        Assert.Equal(HttpStatusCode.OK, await Change(shop, cookie));
        _time.Advance(TimeSpan.FromMinutes(119)); // counts from the last use
        Assert.Equal(HttpStatusCode.OK, await Change(shop, cookie));
        _time.Advance(TimeSpan.FromMinutes(120));
        Assert.Equal(HttpStatusCode.Unauthorized, await Change(shop, cookie));
    }

    [Fact]
    public async Task Session_UsedAllTheTime_EndsAtItsLongest()
    {
        await using ShopPage shop = await ShopPage.Start(time: _time, sources: Typed, settings: [("access:sessionIdleH", "20"), ("access:sessionLongestDays", "2")]);
        string cookie = shop.SignIn();
        for (int hour = 10; hour < 48; hour += 10)
        {
            _time.Advance(TimeSpan.FromHours(10));
            Assert.Equal(HttpStatusCode.OK, await Change(shop, cookie));
        }

        _time.Advance(TimeSpan.FromHours(8));
        Assert.Equal(HttpStatusCode.Unauthorized, await Change(shop, cookie));
    }

    [Fact]
    public async Task Cookie_Plain_IsForThisHostNotForScriptsAndNotForOtherSites()
    {
        await using ShopPage shop = await ShopPage.Start(time: _time);
        string code = shop.Services.GetRequiredService<StartCode>().Current;
        using HttpClient http = new(new SocketsHttpHandler { UseCookies = false });
        using HttpResponseMessage answer = await Post(http, shop.Url + "/api/sign-in", $$"""{ "secret": "{{code}}" }""", null);

        // RFC 6265bis, 4.1.2: HttpOnly keeps scripts off, SameSite=Strict other sites, no Domain the neighbours of the host.
        string cookie = answer.Headers.GetValues("Set-Cookie").Single();
        Assert.StartsWith("boothwatch=", cookie, StringComparison.Ordinal);
        Assert.Equal(["httponly", "max-age=7776000", "path=/", "samesite=strict"], cookie.Split("; ").Skip(1).Select(part => part.ToLowerInvariant()).Order());
    }

    [Fact]
    public async Task Stream_FromAfar_EndsWithItsSession()
    {
        await using ShopPage shop = await ShopPage.Start(time: _time, caller: IPAddress.Parse(SeemsFrom.Afar));
        AccessFolder folder = shop.Services.GetRequiredService<AccessFolder>();
        using SharedSecret secret = new(folder);
        secret.Set(SecretHash.Of("winch gravel plum teapot", iterations: 1000));
        string cookie = "boothwatch=" + shop.Services.GetRequiredService<SessionStore>().Begin(secret.State.Stamp!);

        using HttpClient http = new(new SocketsHttpHandler { UseCookies = false });
        using HttpRequestMessage request = new(HttpMethod.Get, shop.Url + "/api/events");
        request.Headers.Add("Cookie", cookie);
        using HttpResponseMessage answer = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        using StreamReader stream = new(await answer.Content.ReadAsStreamAsync());
        Assert.StartsWith("event: assessment", await stream.ReadLineAsync(), StringComparison.Ordinal);

        _time.Advance(AccessGate.StreamCheck);
        await shop.Show(Samples.Spray);
        Assert.False(await HasEnded(stream, wanted: "event:"));
        secret.Set(SecretHash.Of("another four words here", iterations: 1000));
        _time.Advance(AccessGate.StreamCheck);
        Assert.True(await HasEnded(stream, wanted: null));
    }

    private static async Task<bool> HasEnded(StreamReader stream, string? wanted)
    {
        try
        {
            string? line;
            do
            {
                line = await stream.ReadLineAsync().WaitAsync(TimeSpan.FromMinutes(1));
            }
            while (line is not null && (wanted is null || !line.StartsWith(wanted, StringComparison.Ordinal)));
            return line is null;
        }
        catch (Exception problem) when (problem is IOException or HttpRequestException)
        {
            return true;
        }
    }

    [Fact]
    public void Session_OutlivesARestart_ButNotTheLossOfItsFile()
    {
        string token = Store().Begin("none");
        _time.Advance(TimeSpan.FromHours(1));
        Assert.NotNull(Store().Use(token));
        File.WriteAllText(Folder.SessionsFile, "not JSON");
        Assert.Null(Store().Use(token));
    }

    [Fact]
    public void File_OfTheSessions_SignsNobodyIn_AndOnlyItsOwnerReadsIt()
    {
        string token = Store().Begin("none");
        string text = File.ReadAllText(Folder.SessionsFile);
        Assert.DoesNotContain(token, text, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Folder.SessionsFile));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Folder.Path));
    }

    [Fact]
    public void Sessions_TooMany_EndTheOneUnusedForLongest()
    {
        SessionStore store = Store();
        string first = store.Begin("none");
        for (int i = 1; i < SessionStore.Most; i++)
        {
            _time.Advance(TimeSpan.FromSeconds(1));
            store.Begin("none");
        }

        Assert.NotNull(store.Use(first));
        string last = store.Begin("none");
        Assert.NotNull(store.Use(first));
        Assert.NotNull(store.Use(last));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("none")]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    public void Token_ThatWasNeverGiven_IsNoSession(string? token) => Assert.Null(Store().Use(token));

    [Fact]
    public void Session_WhereNothingCanBeWritten_StillHoldsForThisRun()
    {
        // A file where the folder should be: as on a disk that cannot be written, whoever the user is.
        File.WriteAllText(Folder.Path, "in the way");
        SessionStore store = Store();
        string token = store.Begin("none");
        Assert.NotNull(store.Use(token));
    }

    private static PageSources Typed => Samples.Sources with { PieceEntry = new PieceEntry(-40, 80, TimeSpan.FromMinutes(30), _ => { }, () => null) };

    private SessionStore Store() => new(Folder, new SharedSecret(Folder), Options.Create(new AccessOptions()), _time, NullLogger<SessionStore>.Instance);

    private static async Task<HttpStatusCode> Change(ShopPage shop, string cookie)
    {
        using HttpClient http = new(new SocketsHttpHandler { UseCookies = false });
        using HttpResponseMessage answer = await Post(http, shop.Url + "/api/piece-temperature", """{ "temperatureC": 18.5 }""", cookie);
        return answer.StatusCode;
    }

    private static async Task<HttpResponseMessage> Post(HttpClient http, string address, string json, string? cookie)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, address) { Content = new StringContent(json, Encoding.UTF8, "application/json") };
        request.Headers.Add(AccessGate.ChangeHeader, "1");
        if (cookie is not null)
        {
            request.Headers.Add("Cookie", cookie);
        }

        return await http.SendAsync(request);
    }
}
