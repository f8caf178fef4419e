using System.Xml.Linq;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Page;

public sealed class ChartDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly DateTimeOffset From = new(2026, 6, 3, 6, 0, 0, TimeSpan.Zero);
    private static readonly ChartDrawing Drawing = new(new DegreeText(TemperatureUnit.Celsius), TimeZoneInfo.Utc);

    [Theory]
    [InlineData(358, 300)]
    [InlineData(720, 330)]
    [InlineData(240, 160)]
    [InlineData(2400, 1600)]
    public void Chart_OfAMorning_IsSvgWithEverySeriesUnitAndVerdict(int width, int height)
    {
        XElement svg = Draw(Request(width, height), Morning());
        Assert.Equal(Svg + "svg", svg.Name);
        Assert.Equal(width, (int)svg.Attribute("width")!);
        Assert.Equal(height, (int)svg.Attribute("height")!);
        string[] words = Words(svg);
        foreach (string word in new[] { "air", "dew point", "blush limit", "coldest film", "temperature, °C", "time of day at the booth, h:min", "spray", "slow down", "wait" })
        {
            Assert.Contains(word, words);
        }
    }

    [Theory]
    [InlineData("#F2F5F8", "air")]
    [InlineData("#5CB8F0", "dew point")]
    [InlineData("#FFCF55", "blush limit")]
    [InlineData("#E59AC4", "coldest film")]
    public void Line_OfEachSeries_IsDrawn(string colour, string series)
    {
        // Long paths only: the sample in the legend is short.
        IEnumerable<XElement> lines = Draw(Request(), Morning()).Descendants(Svg + "path").Where(p =>
            new[] { "stroke", "fill" }.Any(a => string.Equals((string?)p.Attribute(a), colour, StringComparison.OrdinalIgnoreCase))
            && p.Attribute("d")!.Value.Length > 300);
        Assert.True(lines.Any(), $"no line for {series}");
    }

    [Theory]
    [InlineData("#5CB8F0", null)]
    [InlineData("#FFCF55", "9 5")]
    [InlineData("#E59AC4", "2.5 4")]
    public void Line_OfEachSeries_HasAPatternOfItsOwn(string colour, string? dashes)
    {
        XElement[] lines = Strokes(Draw(Request(), Morning()), colour);
        Assert.NotEmpty(lines);
        Assert.All(lines, line => Assert.Equal(dashes, (string?)line.Attribute("stroke-dasharray")));
    }

    [Fact]
    public void Chart_Drawn_LeavesTheErrorStreamOfTheProcessQuiet()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        // The drawing library's native part writes past Console.Error. Other tests may write meanwhile: its own words are looked for.
        string file = Path.GetTempFileName();
        int kept = ErrorStream.Dup(2);
        using (FileStream catcher = new(file, FileMode.Create, FileAccess.Write, FileShare.ReadWrite))
        {
            _ = ErrorStream.Dup2((int)catcher.SafeFileHandle.DangerousGetHandle(), 2);
            try
            {
                Draw(Request(), Morning());
                Draw(Request() with { Theme = "light" }, []);
                Drawing.DrawTrouble(Request(), "the disk is gone");
            }
            finally
            {
                _ = ErrorStream.Dup2(kept, 2);
                _ = ErrorStream.Close(kept);
            }
        }

        string said = File.ReadAllText(file);
        File.Delete(file);
        Assert.DoesNotContain("Unsupported", said, StringComparison.Ordinal);
        Assert.DoesNotContain("addPaint", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(720, "clock time, h:min (the shop's day runs 135 times faster)")]
    [InlineData(358, "clock time (shop runs 135 times faster)")]
    public void TimeAxis_OfACompressedDay_SaysThatTheShopRunsFaster(int width, string words) =>
        Assert.Contains(words, Words(Draw(Request(width) with { ShopSpeed = 135 }, Morning())));

    [Fact]
    public void Gap_InTheHistory_BreaksTheLine()
    {
        HistoryPoint[] whole = Morning();
        HistoryPoint[] broken = [.. whole.Where((_, i) => i is < 100 or > 140)];
        Assert.Equal(1, Runs(whole));
        Assert.Equal(2, Runs(broken));

        static int Runs(HistoryPoint[] points) => Strokes(Draw(Request(), points), "#5CB8F0")
            .Select(line => line.Attribute("d")!.Value).Where(d => d.Length > 60).Sum(d => d.Count(c => c == 'M'));
    }

    [Fact]
    public void Gap_OfOneQuantity_BreaksOnlyItsLine()
    {
        HistoryPoint[] points = Morning();
        for (int i = 100; i < 140; i++)
        {
            points[i] = points[i] with { LowestFilmTemperatureC = null };
        }

        Assert.Equal(1, Strokes(Draw(Request(), points), "#5CB8F0").Select(l => l.Attribute("d")!.Value).Where(d => d.Length > 60).Sum(d => d.Count(c => c == 'M')));
    }

    [Fact]
    public void Gaps_AreFoundAgainstTheUsualStep()
    {
        HistoryPoint[] minutes = [.. Enumerable.Range(0, 10).Select(i => new HistoryPoint { Time = From.UtcDateTime.AddMinutes(i) })];
        Assert.DoesNotContain(null, ChartDrawing.BreakAtGaps(minutes));
        Assert.Equal(5, ChartDrawing.BreakAtGaps([.. minutes[..5], .. minutes[8..]]).ToList().IndexOf(null));
    }

    [Fact]
    public void Chart_Empty_SaysSoAndKeepsItsAxes()
    {
        string[] words = Words(Draw(Request(), []));
        Assert.Contains("nothing recorded yet", words);
        Assert.Contains("temperature, °C", words);
        Assert.Contains("07:00", words);
        Assert.DoesNotContain("dew point", words);
    }

    [Fact]
    public void Chart_OfVerdictsWithoutFigures_StillShowsTheVerdicts()
    {
        HistoryPoint[] blind = [.. Morning().Select(p => new HistoryPoint { Time = p.Time, Verdict = Verdict.Wait })];
        XElement svg = Draw(Request(), blind);
        Assert.Contains(svg.Descendants(Svg + "rect"), r => (string?)r.Attribute("fill") == "#D8372B");
        Assert.Contains("nothing recorded yet", Words(svg));
    }

    [Fact]
    public void Verdicts_LieInLanesOfTheirOwn()
    {
        XElement svg = Draw(Request(), Morning());
        double Top(string colour) => svg.Descendants(Svg + "rect")
            .Where(r => (string?)r.Attribute("fill") == colour).Select(r => (double)r.Attribute("y")!).Distinct().Single();
        double spray = Top("#2AB07F");
        double slow = Top("#FFC83D");
        double wait = Top("#D8372B");
        Assert.True(spray < slow && slow < wait);
    }

    [Fact]
    public void Chart_OnePoint_IsDrawn() => Assert.Contains("dew point", Words(Draw(Request(), Morning()[..1])));

    [Fact]
    public void Chart_InFahrenheit_NamesTheUnit()
    {
        XElement svg = XDocument.Parse(new ChartDrawing(new DegreeText(TemperatureUnit.Fahrenheit), TimeZoneInfo.Utc).Draw(Request(), Morning())).Root!;
        Assert.Contains("temperature, °F", Words(svg));
    }

    [Fact]
    public void Chart_LightTheme_IsLight() => Assert.Contains("fill=\"white\"", Drawing.Draw(Request() with { Theme = "light" }, Morning()), StringComparison.OrdinalIgnoreCase);

    [Theory]
    [InlineData(60, 5, "06:00:00", "06:00:15")]
    [InlineData(600, 6, "06:00", "06:02")]
    [InlineData(21_600, 7, "06:00", "07:00")]
    [InlineData(259_200, 8, "Wed 12:00", "Thu 00:00")]
    public void TimeMarks_OfAnySpan_AreFewAndRound(int spanS, int most, string first, string second)
    {
        IReadOnlyList<(DateTimeOffset Time, string Label)> ticks = TimeTicks.Between(From, From.AddSeconds(spanS), most, TimeZoneInfo.Utc);
        Assert.InRange(ticks.Count, 2, most);
        Assert.Equal(first, ticks[0].Label);
        Assert.Equal(second, ticks[1].Label);
    }

    [Fact]
    public void TimeMarks_InAnotherZone_AreRoundThere()
    {
        TimeZoneInfo zone = TimeZoneInfo.CreateCustomTimeZone("shop", TimeSpan.FromMinutes(330), "shop", "shop");
        Assert.Equal("12:00", TimeTicks.Between(From, From.AddHours(6), 7, zone)[0].Label);
    }

    private static ChartRequest Request(int width = 720, int height = 330) => new(From, From.AddHours(1), width, height, "dark");

    private static XElement Draw(ChartRequest request, IReadOnlyList<HistoryPoint> points)
    {
        XElement svg = XDocument.Parse(Drawing.Draw(request, points)).Root!;
        return svg;
    }

    private static string[] Words(XElement svg) => [.. svg.Descendants(Svg + "text").Select(t => t.Value.Trim())];

    private static XElement[] Strokes(XElement svg, string colour) =>
        [.. svg.Descendants(Svg + "path").Where(p => string.Equals((string?)p.Attribute("stroke"), colour, StringComparison.OrdinalIgnoreCase))];

    private static HistoryPoint[] Morning() => [.. Enumerable.Range(0, 240).Select(i => new HistoryPoint
    {
        Time = From.UtcDateTime.AddSeconds(15 * i),
        TemperatureC = 21 + (0.01 * i),
        RelativeHumidityPct = 60,
        DewPointC = 12 + (0.03 * i),
        PieceTemperatureC = 20,
        LowestFilmTemperatureC = 15.5 + Math.Sin(i / 10.0),
        BlushMarginC = 4 - (0.025 * i),
        Verdict = i < 120 ? Verdict.Spray : i < 180 ? Verdict.SlowDown : Verdict.Wait,
    })];
}
