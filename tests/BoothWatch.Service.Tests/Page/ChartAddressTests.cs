using BoothWatch.Service.Page;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Page;

/// <summary>Which span the chart shows, and how often it is drawn.</summary>
public sealed class ChartAddressTests
{
    private static readonly HttpClient Http = new();
    private readonly FakeTimeProvider _time = new(Samples.Noon);
    private readonly RecordingHistory _history = new();

    [Fact]
    public async Task Span_WithEmulatedSensors_BeginsAtTheStartOfTheRun()
    {
        await using ShopPage shop = await Start(Samples.Sources);
        await shop.Show(Samples.Spray);
        _time.Advance(TimeSpan.FromMinutes(4));
        await Ask(shop, "/chart.svg");
        Assert.Equal((Samples.Noon, Samples.Noon.AddMinutes(4)), _history.Asked.Single());
    }

    [Fact]
    public async Task Span_WithEmulatedSensorsJustStarted_IsAMinute()
    {
        await using ShopPage shop = await Start(Samples.Sources);
        await Ask(shop, "/chart.svg");
        Assert.Equal((Samples.Noon.AddMinutes(-1), Samples.Noon), _history.Asked.Single());
    }

    [Fact]
    public async Task Span_WithEmulatedSensorsForDays_IsNoLongerThanTheSetting()
    {
        await using ShopPage shop = await Start(Samples.Sources);
        await shop.Show(Samples.Spray);
        _time.Advance(TimeSpan.FromDays(3));
        await Ask(shop, "/chart.svg");
        Assert.Equal(TimeSpan.FromHours(6), _history.Asked.Single().Until - _history.Asked.Single().From);
    }

    [Theory]
    [InlineData("/chart.svg", 6)]
    [InlineData("/chart.svg?hours=0.5", 0.5)]
    public async Task Span_OfARealBooth_IsTheHoursAskedForOrTheSetting(string address, double hours)
    {
        await using ShopPage shop = await Start(new PageSources());
        await Ask(shop, address);
        Assert.Equal((Samples.Noon.AddHours(-hours), Samples.Noon), _history.Asked.Single());
    }

    [Fact]
    public async Task Drawing_AskedAgainWithinSeconds_IsServedAgain()
    {
        await using ShopPage shop = await Start(Samples.Sources);
        await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Ask(shop, "/chart.svg")));
        Assert.Single(_history.Asked);
        _time.Advance(ChartStore.KeepFor);
        await Ask(shop, "/chart.svg");
        Assert.Equal(2, _history.Asked.Count);
        await Ask(shop, "/chart.svg?width=500");
        Assert.Equal(3, _history.Asked.Count);
    }

    private Task<ShopPage> Start(PageSources sources) => ShopPage.Start(time: _time, history: _history, sources: sources);

    private static async Task Ask(ShopPage shop, string address) =>
        Assert.StartsWith("<?xml", await Http.GetStringAsync(new Uri(shop.Url + address)), StringComparison.Ordinal);

    private sealed class RecordingHistory : IHistory
    {
        public List<(DateTimeOffset From, DateTimeOffset Until)> Asked { get; } = [];

        public IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset until, int points)
        {
            Asked.Add((from, until));
            return [];
        }
    }
}
