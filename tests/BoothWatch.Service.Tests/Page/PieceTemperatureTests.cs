using System.Net;
using System.Text;
using System.Text.Json;
using BoothWatch.Service.Access;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Page;

/// <summary>The piece temperature typed in by hand, over a real server.</summary>
public sealed class PieceTemperatureTests
{
    private const string Good = """{"temperatureC": 18.5}""";
    private static readonly HttpClient Http = new();
    private readonly List<double> _entered = [];
    private TimeSpan? _age;

    private PageSources Typed => Samples.Sources with
    {
        PieceEntry = new PieceEntry(-40, 80, TimeSpan.FromMinutes(30), _entered.Add, () => _age),
    };

    [Theory]
    [InlineData(Good, 18.5)]
    [InlineData("""{"temperatureC": -40}""", -40)]
    [InlineData("""{"temperatureC": 80.0, "by": "me"}""", 80)]
    public async Task Post_GoodValue_IsTakenAndSaysHowLongItHolds(string body, double expected)
    {
        await using ShopPage shop = await ShopPage.Start(sources: Typed);
        using HttpResponseMessage answer = await Post(shop, body);
        JsonElement json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal([expected], _entered);
        Assert.Equal(expected, json.GetProperty("temperatureC").GetDouble());
        Assert.Equal(1800, json.GetProperty("holdS").GetDouble());
    }

    [Theory]
    [InlineData("""{"temperatureC": -40.1}""", "temperatureC is -40.1; give °C from -40 to 80, for example {\"temperatureC\": 18.5}")]
    [InlineData("""{"temperatureC": 80.1}""", "temperatureC is 80.1; ")]
    [InlineData("""{"temperatureC": 1e999}""", "temperatureC is 1e999; ")]
    [InlineData("""{"temperatureC": "18.5"}""", "temperatureC is \"18.5\"; ")]
    [InlineData("""{"temperatureC": null}""", "temperatureC is null; ")]
    [InlineData("""{"temperatureF": 65}""", "temperatureC is missing; ")]
    [InlineData("""{"temperatureC": 18, "temperatureC": 19}""", "the body is no JSON; ")]
    [InlineData("""{"temperatureC": NaN}""", "the body is no JSON; ")]
    [InlineData("18.5", "the body is 18.5, no object; ")]
    [InlineData("", "the body is no JSON; ")]
    public async Task Post_WrongBody_IsRefusedNamingFieldValueRangeAndExample(string body, string says)
    {
        await using ShopPage shop = await ShopPage.Start(sources: Typed);
        using HttpResponseMessage answer = await Post(shop, body);
        JsonElement problem = await Problem(answer, HttpStatusCode.BadRequest);
        Assert.StartsWith(says, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.EndsWith("give °C from -40 to 80, for example {\"temperatureC\": 18.5}", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal("temperatureC", problem.GetProperty("parameters")[0].GetString());
        Assert.Empty(_entered);
    }

    [Fact]
    public async Task Post_EndlessBody_IsRefused()
    {
        await using ShopPage shop = await ShopPage.Start(sources: Typed);
        using HttpResponseMessage answer = await Post(shop, Good + new string(' ', 2000));
        Assert.Contains("longer than 1024 bytes", (await Problem(answer, HttpStatusCode.BadRequest)).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Empty(_entered);
    }

    [Theory]
    [InlineData("text/plain")] // the types that a form of another site may send without asking: WHATWG Fetch, CORS-safelisted request-header
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data")]
    [InlineData(null)]
    public async Task Post_NotAsJson_IsRefused(string? mediaType)
    {
        await using ShopPage shop = await ShopPage.Start(sources: Typed);
        using HttpResponseMessage answer = await Post(shop, Good, mediaType);
        Assert.Contains("give application/json", (await Problem(answer, HttpStatusCode.UnsupportedMediaType)).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Empty(_entered);
    }

    [Theory]
    [InlineData("192.0.2.7", null, null, 401)] // another machine of the network; the address is kept for documentation (RFC 5737)
    [InlineData("::ffff:192.0.2.7", null, null, 401)]
    [InlineData(null, "booth.example", null, 403)] // a foreign name that was made to point here
    [InlineData(null, null, "X-Forwarded-For", 401)] // a proxy on this machine that speaks for another
    [InlineData(null, null, "Forwarded", 401)]
    public async Task Post_NotFromThisMachine_IsRefused_WhileNoSecretIsSet(string? from, string? host, string? header, int status)
    {
        await using ShopPage shop = await ShopPage.Start(sources: Typed, caller: from is null ? null : IPAddress.Parse(from));
        using HttpResponseMessage answer = await Post(shop, Good, host: host, header: header);
        string? detail = (await Problem(answer, (HttpStatusCode)status)).GetProperty("detail").GetString();
        Assert.Contains(status == 401 ? "set one on the machine of the booth with 'access set-secret'" : "open it by its address", detail, StringComparison.Ordinal);
        Assert.Empty(_entered);
    }

    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("::1")]
    [InlineData("::ffff:127.0.0.1")]
    public async Task Post_OverAnyLoopback_IsTaken(string from)
    {
        await using ShopPage shop = await ShopPage.Start(sources: Typed, caller: IPAddress.Parse(from));
        using HttpResponseMessage answer = await Post(shop, Good, host: "localhost");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task Post_PieceMeasuredByASensor_IsAConflictThatNamesTheSetting()
    {
        await using ShopPage shop = await ShopPage.Start();
        using HttpResponseMessage answer = await Post(shop, Good);
        Assert.Contains("set sensors:piece:part to typed", (await Problem(answer, HttpStatusCode.Conflict)).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task OpenApi_OfThePost_NamesBodyRangeAndRefusals()
    {
        await using ShopPage shop = await ShopPage.Start();
        JsonElement post = JsonDocument.Parse(await Http.GetStringAsync(new Uri(shop.Url + "/api/openapi.json")))
            .RootElement.GetProperty("paths").GetProperty("/api/piece-temperature").GetProperty("post");
        JsonElement field = post.GetProperty("requestBody").GetProperty("content").GetProperty("application/json")
            .GetProperty("schema").GetProperty("properties").GetProperty("temperatureC");
        Assert.Equal((-40, 80), (field.GetProperty("minimum").GetInt32(), field.GetProperty("maximum").GetInt32()));
        Assert.Equal(["200", "400", "401", "403", "409", "415", "429"], post.GetProperty("responses").EnumerateObject().Select(r => r.Name).Order());
    }

    [Fact]
    public async Task Html_OffersTheEntryOnlyWhereThePieceIsTyped()
    {
        await using ShopPage measured = await ShopPage.Start();
        Assert.DoesNotContain("pieceForm", await Http.GetStringAsync(new Uri(measured.Url)), StringComparison.Ordinal);

        await using ShopPage typed = await ShopPage.Start(sources: Typed with { TemperatureUnit = TemperatureUnit.Fahrenheit });
        string html = WebUtility.HtmlDecode(await Http.GetStringAsync(new Uri(typed.Url)));
        // -40 is -40 on both scales, 80 °C x 1.8 + 32 = 176 °F.
        Assert.Contains("min=\"-40\" max=\"176\"", html, StringComparison.Ordinal);
        Assert.Contains("Piece measured by hand, °F", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "not typed in yet")]
    [InlineData(20, "typed 20 s ago, expires in 29 min")]
    [InlineData(185, "typed 3 min ago, expires in 26 min")]
    [InlineData(1785, "typed 29 min ago, expires in 15 s")]
    [InlineData(1801, "typed 30 min ago, expired: measure again")]
    [InlineData(86_400, "typed 24 h ago, expired: measure again")]
    public void Words_SayHowOldTheValueIsAndWhenItExpires(int? ageS, string words)
    {
        _age = ageS is { } s ? TimeSpan.FromSeconds(s) : null;
        Assert.Equal(words, Typed.PieceEntry!.Words.Replace('\u00a0', ' '));
    }

    private static async Task<HttpResponseMessage> Post(ShopPage shop, string body, string? mediaType = "application/json", string? host = null, string? header = null)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, shop.Url + "/api/piece-temperature")
        {
            Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body)),
        };
        request.Content.Headers.ContentType = mediaType is null ? null : new(mediaType);
        request.Headers.Host = host;
        request.Headers.Add(AccessGate.ChangeHeader, "1");
        request.Headers.Add("Cookie", shop.SignIn());
        if (header is not null)
        {
            request.Headers.Add(header, "for=192.0.2.7");
        }

        return await Http.SendAsync(request);
    }

    private static async Task<JsonElement> Problem(HttpResponseMessage answer, HttpStatusCode status)
    {
        Assert.Equal(status, answer.StatusCode);
        // RFC 9457, section 3.
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        return JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
    }
}
