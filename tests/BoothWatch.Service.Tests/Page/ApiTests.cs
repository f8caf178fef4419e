using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using BoothWatch.Readings;
using BoothWatch.Service.Page;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Page;

/// <summary>The JSON over a real server.</summary>
public sealed class ApiTests
{
    private static readonly HttpClient Http = new();

    [Fact]
    public async Task Now_Fresh_CarriesTheWholeAssessment()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.SlowDown);
        JsonElement now = await Json(shop, "/api/now");

        // RFC 3339, section 5.6, in UTC.
        Assert.Matches(new Regex(@"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$"), now.GetProperty("time").GetString());
        Assert.Equal("2026-06-03T12:00:00Z", now.GetProperty("time").GetString());
        Assert.Equal("slow down", now.GetProperty("verdict").GetString());
        Assert.False(now.GetProperty("stale").GetBoolean());
        Assert.InRange(now.GetProperty("ageS").GetDouble(), 0, 5);
        Assert.Equal("Harbour Lane", now.GetProperty("shop").GetString());
        Assert.Equal("corner", now.GetProperty("booth").GetString());
        JsonElement reason = now.GetProperty("reasons")[0];
        Assert.Equal("blush-margin", reason.GetProperty("rule").GetString());
        Assert.Equal("slow down", reason.GetProperty("limit").GetString());
        Assert.StartsWith("add 12 mL more retarder", reason.GetProperty("action").GetString(), StringComparison.Ordinal);
        Assert.Equal(17.6, now.GetProperty("air").GetProperty("dewPointC").GetDouble());
        Assert.Equal(0.9, now.GetProperty("film").GetProperty("blushMarginC").GetDouble());
        Assert.Equal(27, now.GetProperty("film").GetProperty("recommendedRetarderMl").GetDouble());
        JsonElement reading = now.GetProperty("readings").EnumerateArray().First(r => r.GetProperty("quantity").GetString() == "booth-humidity");
        Assert.Equal("boothAir", reading.GetProperty("sensor").GetString());
        Assert.Equal("good", reading.GetProperty("quality").GetString());
        Assert.Equal("%", reading.GetProperty("unit").GetString());
        Assert.Equal(0.6, reading.GetProperty("ageS").GetDouble());
        Assert.Equal(6, now.GetProperty("readings").GetArrayLength());
        Assert.True(now.GetProperty("sensors")[0].GetProperty("emulated").GetBoolean());
        Assert.Equal("series", now.GetProperty("outputs")[0].GetProperty("name").GetString());
        Assert.Equal("13:40", now.GetProperty("demo").GetProperty("shopClock").GetString());
    }

    [Fact]
    public async Task Now_SensorWithoutReading_SaysWhy()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Blind);
        JsonElement now = await Json(shop, "/api/now");
        JsonElement reading = now.GetProperty("readings")[0];
        Assert.Equal("no-reading", reading.GetProperty("quality").GetString());
        Assert.Equal("CRC of the humidity word is wrong", reading.GetProperty("cause").GetString());
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("value").ValueKind);
        Assert.Equal(JsonValueKind.Null, now.GetProperty("film").ValueKind);
    }

    [Fact]
    public async Task Now_BeforeTheFirstAssessment_IsWait()
    {
        await using ShopPage shop = await ShopPage.Start();
        JsonElement now = await Json(shop, "/api/now");
        Assert.Equal("wait", now.GetProperty("verdict").GetString());
        Assert.True(now.GetProperty("stale").GetBoolean());
        Assert.Equal("no-assessment", now.GetProperty("reasons")[0].GetProperty("rule").GetString());
        Assert.Contains("data-verdict=\"wait\"", await Http.GetStringAsync(new Uri(shop.Url)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4.9, "spray")]
    [InlineData(5.1, "wait")]
    public async Task Now_AssessmentAges_TurnsToWaitAfterFiveSecondsWithTheReason(double ageS, string verdict)
    {
        FakeTimeProvider time = new();
        await using ShopPage shop = await ShopPage.Start(time: time);
        await shop.Show(Samples.Spray);
        time.Advance(TimeSpan.FromSeconds(ageS));
        JsonElement now = await Json(shop, "/api/now");
        Assert.Equal(verdict, now.GetProperty("verdict").GetString());
        Assert.Equal(ageS, now.GetProperty("ageS").GetDouble());
        Assert.Equal(verdict == "wait", now.GetProperty("reasons")[0].GetProperty("rule").GetString() == "stale-assessment");
        Assert.Contains($"\"verdict\":\"{verdict}\"", await Http.GetStringAsync(new Uri(shop.Url)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Now_ClockStepsBack_AgeFollowsTheMonotonicClock()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray with { Time = TimeProvider.System.GetUtcNow().AddYears(3) });
        Assert.Equal("spray", (await Json(shop, "/api/now")).GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task History_Span_GivesPointsWithUtcTimes()
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        JsonElement history = await Json(shop, "/api/history?from=2026-06-03T06:00:00Z&to=2026-06-03T14:00:00%2B02:00&points=100");
        Assert.Equal("2026-06-03T06:00:00Z", history.GetProperty("from").GetString());
        Assert.Equal("2026-06-03T12:00:00Z", history.GetProperty("to").GetString());
        JsonElement point = history.GetProperty("points")[0];
        Assert.EndsWith("Z", point.GetProperty("time").GetString(), StringComparison.Ordinal);
        Assert.Equal("spray", point.GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Number, point.GetProperty("dewPointC").ValueKind);
    }

    [Theory]
    [InlineData("/api/history?from=yesterday", "from", "from is yesterday; give a time after RFC 3339", "for example from=20")]
    [InlineData("/api/history?to=2026-06-03T06:00:00", "to", "to is 2026-06-03T06:00:00; give a time", "with Z or an offset")]
    [InlineData("/api/history?points=1", "points", "points is 1; give a number from 2 to 12000", "for example points=500")]
    [InlineData("/api/history?points=many", "points", "points is many", "from 2 to 12000")]
    [InlineData("/api/history?from=2026-06-03T06:00:00Z&to=2026-06-03T05:00:00Z", "from", "from is 2026-06-03T06:00:00Z; give a time before 'to'", "from=2026-06-03T04:00:00Z")]
    [InlineData("/api/history?from=1970-01-01T00:00:00Z&to=2026-06-03T05:00:00Z", "from", "at most 1830 days", "for example")]
    [InlineData("/chart.svg?hours=0", "hours", "hours is 0; give hours from 0.1 to 72", "for example hours=6")]
    [InlineData("/chart.svg?hours=NaN", "hours", "hours is NaN", "from 0.1 to 72")]
    [InlineData("/chart.svg?width=100000", "width", "width is 100000; give pixels from 240 to 2400", "for example width=720")]
    [InlineData("/chart.svg?theme=pink", "theme", "theme is pink; give dark or light", "for example theme=dark")]
    public async Task Parameter_Wrong_ProblemNamesItItsRangeAndAnExample(string address, string parameter, string says, string alsoSays)
    {
        await using ShopPage shop = await ShopPage.Start();
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + address));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        // RFC 9457, section 3.
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal(400, problem.GetProperty("status").GetInt32());
        Assert.Equal(parameter, problem.GetProperty("parameters")[0].GetString());
        Assert.Contains(says, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Contains(alsoSays, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Parameters_SeveralWrong_AreAllNamedAtOnce()
    {
        await using ShopPage shop = await ShopPage.Start();
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + "/api/history?from=x&points=0"));
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal(["from", "points"], problem.GetProperty("parameters").EnumerateArray().Select(p => p.GetString()));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/page.css")]
    [InlineData("/page.js")]
    [InlineData("/icon-wait.svg")]
    [InlineData("/api/now")]
    [InlineData("/api/history")]
    [InlineData("/chart.svg")]
    [InlineData("/nowhere")]
    public async Task Answer_Any_HasTheSafeHeaders(string address)
    {
        await using ShopPage shop = await ShopPage.Start();
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + address));
        string policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        bool isFile = address.EndsWith(".css", StringComparison.Ordinal) || address.EndsWith(".js", StringComparison.Ordinal) || address.StartsWith("/icon", StringComparison.Ordinal);
        Assert.True(isFile ? answer.Headers.CacheControl is { NoCache: true, NoStore: false } : answer.Headers.CacheControl?.NoStore);
        Assert.False(answer.Headers.Contains("Server"));
        Assert.Equal(address == "/nowhere" ? HttpStatusCode.NotFound : HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task History_JournalFails_IsAProblemWithTheSafeHeadersAndNotAStackTrace()
    {
        await using ShopPage shop = await ShopPage.Start(history: new BrokenHistory());
        await shop.Show(Samples.Spray);
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + "/api/history"));
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.Contains("its log says why", text, StringComparison.Ordinal);
        Assert.DoesNotContain("secret path", text, StringComparison.Ordinal);
        Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Equal("spray", (await Json(shop, "/api/now")).GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task Html_Words_AreEscaped()
    {
        await using ShopPage shop = await ShopPage.Start(sources: Samples.Sources with { Shop = "<script>alert(1)</script>" });
        await shop.Show(Samples.Spray with { Reasons = [new("r", Verdicts.Verdict.Spray, "<b>x</b>", "&"), new("r", Verdicts.Verdict.Spray, "<i>y</i>", "z")] });
        string html = await Http.GetStringAsync(new Uri(shop.Url));
        Assert.DoesNotContain("<script>alert", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>x", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<i>y", html, StringComparison.Ordinal);
        Assert.DoesNotContain("{{", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Html_AirNotKnown_StillShowsTheGoodReadings()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray with { Air = null, Film = null });
        string html = WebUtility.HtmlDecode(await Http.GetStringAsync(new Uri(shop.Url)));
        Assert.Contains("data-field=\"temperature\">22.4\u00a0°C<", html, StringComparison.Ordinal);
        Assert.Contains("data-field=\"piece\">20.9\u00a0°C<", html, StringComparison.Ordinal);
        Assert.Contains("data-field=\"dewPoint\">–<", html, StringComparison.Ordinal);

        await shop.Show(Samples.Blind);
        html = WebUtility.HtmlDecode(await Http.GetStringAsync(new Uri(shop.Url)));
        Assert.Contains("data-field=\"temperature\">–<", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Html_InFahrenheit_ConvertsTemperaturesAndDifferences()
    {
        await using ShopPage shop = await ShopPage.Start(sources: Samples.Sources with { TemperatureUnit = Verdicts.TemperatureUnit.Fahrenheit });
        await shop.Show(Samples.Spray);
        string html = WebUtility.HtmlDecode(await Http.GetStringAsync(new Uri(shop.Url)));
        // 22.4 °C x 1.8 + 32; a margin of 3.4 °C x 1.8.
        Assert.Contains("72.3\u00a0°F", html, StringComparison.Ordinal);
        Assert.Contains("+6.1\u00a0°F", html, StringComparison.Ordinal);
        Assert.Equal(22.4, (await Json(shop, "/api/now")).GetProperty("air").GetProperty("temperatureC").GetDouble());
    }

    [Fact]
    public async Task Now_OfAShopThatReadsFahrenheit_SaysInItWhyASensorIsNotBelieved()
    {
        await using ShopPage shop = await ShopPage.Start(sources: Samples.Sources with { TemperatureUnit = Verdicts.TemperatureUnit.Fahrenheit });
        Reading faulty = new(
            Quantity.BoothTemperature, "boothAir", 71, 0.1, TimeSpan.Zero, ReadingQuality.OutOfRange, new Cause($"reads {new Degrees(71)}, plausible is less"));
        await shop.Show(Samples.Blind with { Snapshot = Samples.Blind.Snapshot with { Readings = Samples.Blind.Snapshot.Readings.SetItem(faulty.Quantity, faulty) } });

        // 71 °C x 1.8 + 32.
        Assert.Equal("reads 159.8 °F, plausible is less", (await Json(shop, "/api/now")).GetProperty("readings")[0].GetProperty("cause").GetString());
        Assert.Contains("reads 159.8 °F, plausible is less", WebUtility.HtmlDecode(await Http.GetStringAsync(new Uri(shop.Url))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task OpenApi_Document_DescribesEveryAddressWithItsParametersAndWords()
    {
        await using ShopPage shop = await ShopPage.Start();
        JsonElement api = await Json(shop, "/api/openapi.json");
        Assert.StartsWith("3.", api.GetProperty("openapi").GetString(), StringComparison.Ordinal);
        JsonElement paths = api.GetProperty("paths");
        Assert.Equal(["/api/events", "/api/health", "/api/history", "/api/now", "/api/piece-temperature", "/api/session", "/api/sign-in", "/api/sign-out", "/chart.svg"], paths.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
        Assert.Equal(["from", "to", "points", "shape"], paths.GetProperty("/api/history").GetProperty("get").GetProperty("parameters").EnumerateArray().Select(p => p.GetProperty("name").GetString()));
        JsonElement schemas = api.GetProperty("components").GetProperty("schemas");
        Assert.Equal(["wait", "slow down", "spray"], schemas.GetProperty("Verdict").GetProperty("enum").EnumerateArray().Select(e => e.GetString()));

        Assert.Contains("monotonic clock", schemas.GetProperty("NowAnswer").GetProperty("properties").GetProperty("ageS").GetProperty("description").GetString(), StringComparison.Ordinal);

        // It is made once.
        Assert.Equal(api.GetRawText(), (await Json(shop, "/api/openapi.json")).GetRawText());

        // What is documented is what is said, and the other way round.
        await shop.Show(Samples.Spray);
        JsonElement now = await Json(shop, "/api/now");
        Assert.Equal(
            now.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal),
            schemas.GetProperty("NowAnswer").GetProperty("properties").EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
        Assert.Equal(Enum.GetValues<Quantity>().Length, schemas.GetProperty("Quantity").GetProperty("enum").GetArrayLength());
    }

    [Fact]
    public async Task Health_WithAnOutputThatFails_SaysWhichAndHowMuchWaits()
    {
        var failing = new OutputStatus { Name = "influx", Working = false, Backlog = 540, BacklogAgeS = 541.2, LastError = "cannot be reached" };
        PageSources sources = Samples.Sources with { Health = () => [new OutputStatus { Name = "light", Working = true }, failing] };
        await using ShopPage shop = await ShopPage.Start(sources: sources);

        JsonElement health = await Json(shop, "/api/health");

        Assert.False(health.GetProperty("working").GetBoolean());
        JsonElement influx = health.GetProperty("outputs")[1];
        Assert.Equal("influx", influx.GetProperty("name").GetString());
        Assert.Equal(540, influx.GetProperty("backlog").GetInt64());
        Assert.Equal(541.2, influx.GetProperty("backlogAgeS").GetDouble());
        Assert.Equal(JsonValueKind.Null, influx.GetProperty("lastSuccess").ValueKind);

        // What is documented is what is said.
        JsonElement schemas = (await Json(shop, "/api/openapi.json")).GetProperty("components").GetProperty("schemas");
        Assert.Equal(
            influx.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal),
            schemas.GetProperty("OutputStatus").GetProperty("properties").EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
    }

    private static async Task<JsonElement> Json(ShopPage shop, string address)
    {
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + address));
        string text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonDocument.Parse(text).RootElement;
    }

    private sealed class BrokenHistory : IHistory
    {
        public IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset until, int points) =>
            throw new InvalidOperationException("secret path");
    }
}
