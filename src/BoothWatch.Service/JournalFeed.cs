using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service;

/// <summary>Shows the journal to the shipper; here, because the two may not know each other.</summary>
internal sealed class JournalFeed(ShippingCursor cursor, string measurement, TimeProvider time) : IJournalFeed
{
    public string Measurement => measurement;

    /// <summary>Feeds of all that is shipped: every assessment, and every change of the verdict with its reasons. Minutes follow from the first.</summary>
    public static IServiceCollection Register(IServiceCollection services)
    {
        services.AddSingleton<IJournalFeed>(provider => Feed(provider, ShippingCursor.Readings, "booth_reading"));
        services.AddSingleton<IJournalFeed>(provider => Feed(provider, ShippingCursor.VerdictChanges, "booth_verdict_change"));
        return services.AddSingleton(provider =>
        {
            BoothOptions booth = provider.GetRequiredService<IOptions<BoothOptions>>().Value;
            return new BoothTags(booth.Shop, booth.Name, provider.GetRequiredService<JournalLocation>().IsDemo);
        });
    }

    public IReadOnlyList<FeedRow> Read(int most) => [.. cursor.Read(most).Select(RowOf)];

    public FeedRow? Newest() => cursor.Newest() is { } row ? RowOf(row) : null;

    public FeedState State()
    {
        ShippingState state = cursor.State();
        return new FeedState(state.Waiting, state.Oldest, state.Missed, state.SetAside);
    }

    public void Advance(IReadOnlyList<FeedRow> rows) => cursor.Advance(rows[0].Id, rows[^1].Id, rows.Count);

    public void SetAside(FeedRow row, string reason, string point) => cursor.SetAside(row.Id, time.GetUtcNow(), reason, point);

    private static FeedRow RowOf(JournalRow row) => new(row.Id, row.Time, row.Values);

    private static JournalFeed Feed(IServiceProvider provider, string source, string measurement)
    {
        var cursor = new ShippingCursor(provider.GetRequiredService<JournalLocation>(), provider.GetRequiredService<Journal>(), source);
        return new JournalFeed(cursor, measurement, provider.GetRequiredService<TimeProvider>());
    }
}
