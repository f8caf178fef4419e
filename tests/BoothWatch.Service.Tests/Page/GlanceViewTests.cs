using System.Text.Json;
using BoothWatch.Outlook;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Page;

/// <summary>What the glance says beside the verdict: the chosen cup, the time left, the moment of sending.</summary>
public sealed class GlanceViewTests
{
    private static readonly HttpClient Http = new();
    private static readonly DegreeText Celsius = new(TemperatureUnit.Celsius);

    [Theory]
    [InlineData(100, "+4\u00a0mL", "add 4\u00a0mL more retarder (to 9\u00a0%)")]
    [InlineData(300, "+12\u00a0mL", "add 12\u00a0mL more retarder (to 9\u00a0%)")]
    [InlineData(1000, "+40\u00a0mL", "add 40\u00a0mL more retarder (to 9\u00a0%)")]
    public void Cup_OfAnySize_HasItsOwnMillilitresInEveryLine(double cupMl, string mark, string advice)
    {
        // From 5 % to 9 % of the unretarded mix: 4 mL for each 100 mL.
        PageView view = View(Samples.SlowDown, cupMl);
        Assert.Equal(mark, view.Fields["retarder"]);
        Assert.Equal(advice, view.Fields["retarderMl"]);
        Assert.StartsWith(advice, view.Fields["action"], StringComparison.Ordinal);
        Assert.Contains($"a full cup of {cupMl:0}\u00a0mL", view.Fields["coat"], StringComparison.Ordinal);
        Assert.Equal((cupMl, 300), (view.CupMl, view.ShopCupMl));
    }

    [Fact]
    public void Cup_NotChosen_IsThatOfTheShop() => Assert.Equal("+12\u00a0mL", View(Samples.SlowDown, null).Fields["retarder"]);

    [Theory]
    [InlineData("cup=abc", "cup is abc")]
    [InlineData("cup=5", "cup is 5; give mL from 10 to 20000")]
    [InlineData("cup=NaN", "cup is NaN")]
    public async Task Cup_Wrong_IsRefusedWithTheFix(string query, string says)
    {
        await using ShopPage shop = await ShopPage.Start();
        using HttpResponseMessage answer = await Http.GetAsync(new Uri($"{shop.Url}/api/view?{query}"));
        Assert.Contains(says, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(400, (int)answer.StatusCode);
    }

    [Theory]
    [InlineData(0.3, "under 1\u00a0min")]
    [InlineData(7.2, "7\u00a0min")]
    [InlineData(23, "25\u00a0min")]
    [InlineData(60, "1\u00a0h")]
    [InlineData(134, "2\u00a0h 10\u00a0min")]
    public void Left_IsWrittenAsCoarselyAsALineDeserves(double minutes, string mark) =>
        Assert.Equal(mark, View(Closing(minutes)).Fields["left"]);

    [Fact]
    public void Left_AlwaysSaysItsIfItsRangeAndItsRate() =>
        Assert.Equal(
            "until the blush margin is used up, if this went on (15\u00a0min to 45\u00a0min); it falls 1.8\u00a0°C an hour",
            View(Closing(25)).Fields["leftMeaning"]);

    [Fact]
    public void Left_OfAnOldAssessment_IsNotShown() =>
        Assert.Equal("", View(Closing(25) with { Age = TimeSpan.FromSeconds(6) }).Fields["left"]);

    [Fact]
    public async Task Feed_OfAClosingMargin_SaysHowLongItLastsAndOnlyWhileSprayingIsAllowed()
    {
        FakeTimeProvider time = new(Samples.Noon);
        PageFeed feed = new(time);
        // From 3.0 to 2.0 °C in 20 min: 3 °C/h, so 40 min are left.
        for (int s = 0; s <= 1200; s += 5)
        {
            await feed.HandleAsync(With(Samples.Spray, 3.0 - (s * 3.0 / 3600)), CancellationToken.None);
            time.Advance(TimeSpan.FromSeconds(5));
        }

        Assert.Equal(40, feed.Current.Closing!.Left.TotalMinutes, 0.2);
        await feed.HandleAsync(With(Samples.Spray, 2.0) with { Verdict = Verdict.Wait }, CancellationToken.None);
        Assert.Null(feed.Current.Closing);
    }

    [Fact]
    public async Task Feed_OfAMarginThatTheShopsCoatsDoNotTrust_CountsToTheirThreshold()
    {
        FakeTimeProvider time = new(Samples.Noon);
        PageFeed feed = new(time);
        // From 3.0 to 2.0 °C in 20 min: 3 °C/h, so 20 min are left to 1.0 °C, below which the verdict is wait.
        for (int s = 0; s <= 1200; s += 5)
        {
            Assessment assessment = With(Samples.Spray, 3.0 - (s * 3.0 / 3600));
            await feed.HandleAsync(assessment with { Film = assessment.Film! with { BlushesBelowC = 1 } }, CancellationToken.None);
            time.Advance(TimeSpan.FromSeconds(5));
        }

        Assert.Equal(20, feed.Current.Closing!.Left.TotalMinutes, 0.2);
    }

    [Fact]
    public async Task FirstHtml_ByItself_SaysWaitWhateverTheVerdict()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        string html = await Http.GetStringAsync(new Uri(shop.Url));
        Assert.Contains("data-verdict=\"wait\"", html, StringComparison.Ordinal);
        Assert.Contains("aria-live=\"assertive\">Wait</h1>", html, StringComparison.Ordinal);
        Assert.Contains("<title>Wait ", html, StringComparison.Ordinal);
        Assert.Equal("spray", First(html).GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task FirstHtml_WordsOfAStranger_CannotEndTheData()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray with { Reasons = [new("r", Verdict.Spray, "</script><script>alert(1)</script>", "&")] });
        string html = await Http.GetStringAsync(new Uri(shop.Url));
        Assert.DoesNotContain("<script>alert", html, StringComparison.Ordinal);
        Assert.Equal("</script><script>alert(1)</script>", First(html).GetProperty("fields").GetProperty("finding").GetString());
    }

    [Fact]
    public async Task History_AsColumns_IsTheSameAsPoints()
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        JsonElement columns = JsonDocument.Parse(await Http.GetStringAsync(new Uri(shop.Url + "/api/history?shape=columns"))).RootElement;
        JsonElement[] points = [.. JsonDocument.Parse(await Http.GetStringAsync(new Uri(shop.Url + "/api/history"))).RootElement.GetProperty("points").EnumerateArray()];
        string[] names = ["temperatureC", "dewPointC", "lowestFilmTemperatureC", "blushMarginC"];
        Assert.Equal(points.Length, columns.GetProperty("timeS").GetArrayLength());
        for (int i = 0; i < points.Length; i += 50)
        {
            Assert.All(names, name => Assert.Equal(points[i].GetProperty(name).GetDouble(), columns.GetProperty(name)[i].GetDouble(), 0.0051));
            Assert.Equal(points[i].GetProperty("verdict").GetString(), ((Verdict)columns.GetProperty("verdict")[i].GetInt32()).Word());
        }
    }

    private static JsonElement First(string html)
    {
        const string Begin = "<script type=\"application/json\" id=\"first\">";
        int from = html.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        return JsonDocument.Parse(html[from..html.IndexOf("</script>", from, StringComparison.Ordinal)]).RootElement;
    }

    private static Assessment With(Assessment assessment, double marginC) => assessment with { Film = assessment.Film! with { BlushMarginC = marginC } };

    private static CurrentState Closing(double minutes) => new(1, Samples.Spray, TimeSpan.Zero)
    {
        Closing = new ClosingMargin(TimeSpan.FromMinutes(minutes), TimeSpan.FromMinutes(minutes * 0.6), TimeSpan.FromMinutes(minutes * 1.8), 1.8),
    };

    private static PageView View(Assessment assessment, double? cupMl) => PageView.Of(new CurrentState(1, assessment, TimeSpan.Zero), Samples.Sources, Celsius, TimeProvider.System, cupMl);

    private static PageView View(CurrentState state) => PageView.Of(state, Samples.Sources, Celsius, TimeProvider.System);
}
