using System.Net.ServerSentEvents;
using System.Text.Json;
using System.Threading.Channels;
using BoothWatch.Service.Page;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Page;

/// <summary>The stream, first over a real server, then piece by piece on a clock of our own.</summary>
public sealed class LiveEventsTests
{
    private static readonly HttpClient Http = new();

    [Fact]
    public async Task Events_Assessments_ArriveInOrderWithIdAndTheJsonOfNow()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + "/api/events"), HttpCompletionOption.ResponseHeadersRead);
        Assert.Equal("text/event-stream", answer.Content.Headers.ContentType?.MediaType);
        SseParser<string> parser = SseParser.Create(await answer.Content.ReadAsStreamAsync());
        await using IAsyncEnumerator<SseItem<string>> items = parser.EnumerateAsync().GetAsyncEnumerator();

        Assert.Equal(("assessment", "1", "spray"), await Next(items));
        Assert.Equal(LiveEvents.Retry, parser.ReconnectionInterval);
        await shop.Show(Samples.SlowDown);
        Assert.Equal(("assessment", "2", "slow down"), await Next(items));
        await shop.Show(Samples.Wait);
        Assert.Equal(("assessment", "3", "wait"), await Next(items));
    }

    [Fact]
    public async Task Events_ServerStops_StreamEndsAtOnce()
    {
        ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + "/api/events"), HttpCompletionOption.ResponseHeadersRead);
        long before = TimeProvider.System.GetTimestamp();
        await shop.DisposeAsync();
        Assert.True(TimeProvider.System.GetElapsedTime(before) < TimeSpan.FromSeconds(10), "the open stream held up the stop");
    }

    [Fact]
    public async Task Stream_Silent_SendsHeartbeatsThenWaitOnceStale()
    {
        FakeTimeProvider time = new();
        PageFeed feed = new(time);
        await feed.HandleAsync(Samples.Spray, CancellationToken.None);
        using CancellationTokenSource stop = new();
        await using IAsyncEnumerator<SseItem<string>> items = new LiveEvents(feed, time)
            .Read(feed.TryOpen()!, "assessment", s => s.Verdict.ToString(), stop.Token).GetAsyncEnumerator();

        Assert.Equal("Spray", await After(items, time, TimeSpan.Zero));
        Assert.Equal(LiveEvents.HeartbeatEvent, await After(items, time, LiveEvents.Heartbeat));
        Assert.Equal(LiveEvents.HeartbeatEvent, await After(items, time, LiveEvents.Heartbeat));
        Assert.Equal("Wait", await After(items, time, LiveEvents.Heartbeat));
        await feed.HandleAsync(Samples.Spray, CancellationToken.None);
        Assert.Equal("Spray", await After(items, time, TimeSpan.Zero));
        await stop.CancelAsync();
        Assert.False(await items.MoveNextAsync());
    }

    [Fact]
    public async Task Stream_Slow_GetsTheNewestAndHoldsNobodyUp()
    {
        PageFeed feed = new(new FakeTimeProvider());
        Channel<long> slow = feed.TryOpen()!;
        for (int i = 0; i < 10_000; i++)
        {
            Task handled = feed.HandleAsync(Samples.Spray, CancellationToken.None);
            Assert.True(handled.IsCompletedSuccessfully);
        }

        Assert.True(slow.Reader.TryRead(out long sequence));
        Assert.Equal(10_000, sequence);
        Assert.False(slow.Reader.TryRead(out _));
    }

    [Fact]
    public async Task Stream_HeldUp_SendsTheStateOfTheMomentAndNotTheQueuedOne()
    {
        FakeTimeProvider time = new();
        PageFeed feed = new(time);
        await feed.HandleAsync(Samples.Wait, CancellationToken.None);
        await using IAsyncEnumerator<SseItem<string>> items = new LiveEvents(feed, time)
            .Read(feed.TryOpen()!, "assessment", s => $"{s.Verdict} {s.Age.TotalSeconds:0}", CancellationToken.None).GetAsyncEnumerator();
        Assert.Equal("Wait 0", await After(items, time, TimeSpan.Zero));

        // The reader takes nothing for six seconds: a spray of then is no spray of now.
        await feed.HandleAsync(Samples.Spray, CancellationToken.None);
        time.Advance(TimeSpan.FromSeconds(6));
        Assert.Equal("Wait 6", await After(items, time, TimeSpan.Zero));

        // And a younger one comes with its true age.
        await feed.HandleAsync(Samples.Spray, CancellationToken.None);
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal("Spray 1", await After(items, time, TimeSpan.Zero));
    }

    [Fact]
    public async Task Streams_TooMany_AreRefusedWithAReasonAndFreedWhenClosed()
    {
        await using ShopPage shop = await ShopPage.Start();
        Channel<long>[] open = [.. Enumerable.Range(0, PageFeed.MaxStreams).Select(_ => shop.Feed.TryOpen()!)];
        using HttpResponseMessage refused = await Http.GetAsync(new Uri(shop.Url + "/api/events"));
        Assert.Equal(503, (int)refused.StatusCode);
        Assert.Equal("10", Assert.Single(refused.Headers.GetValues("Retry-After")));
        Assert.Contains("close one", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        shop.Feed.Close(open[0]);
        Channel<long>? again = shop.Feed.TryOpen();
        Assert.NotNull(again);
    }

    [Fact]
    public async Task Stream_ClientLeaves_GivesItsPlaceBack()
    {
        FakeTimeProvider time = new();
        PageFeed feed = new(time);
        Channel<long>[] open = [.. Enumerable.Range(0, PageFeed.MaxStreams).Select(_ => feed.TryOpen()!)];
        IAsyncEnumerator<SseItem<string>> items = new LiveEvents(feed, time)
            .Read(open[0], "assessment", _ => "", CancellationToken.None).GetAsyncEnumerator();
        Assert.True(await items.MoveNextAsync());
        Assert.Null(feed.TryOpen());
        await items.DisposeAsync();
        Assert.NotNull(feed.TryOpen());
    }

    private static async Task<string> After(IAsyncEnumerator<SseItem<string>> items, FakeTimeProvider time, TimeSpan advance)
    {
        ValueTask<bool> next = items.MoveNextAsync();
        time.Advance(advance);
        Assert.True(await next.AsTask().WaitAsync(TimeSpan.FromSeconds(30)));
        return items.Current.EventType == LiveEvents.HeartbeatEvent ? LiveEvents.HeartbeatEvent : items.Current.Data;
    }

    private static async Task<(string Type, string? Id, string Verdict)> Next(IAsyncEnumerator<SseItem<string>> items)
    {
        do
        {
            Assert.True(await items.MoveNextAsync());
        }
        while (items.Current.EventType == LiveEvents.HeartbeatEvent);
        return (items.Current.EventType, items.Current.EventId, JsonDocument.Parse(items.Current.Data).RootElement.GetProperty("verdict").GetString()!);
    }
}
