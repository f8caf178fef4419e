using BoothWatch.Service.Outputs.Influx;

namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>A feed of numbered rows in memory.</summary>
internal sealed class MemoryFeed(int rows) : IJournalFeed
{
    private static readonly DateTimeOffset Start = new(2026, 9, 7, 8, 0, 0, TimeSpan.Zero);

    public string Measurement => "booth_reading";

    public long Mark { get; private set; }

    public Dictionary<long, string> Refused { get; } = [];

    public IReadOnlyList<FeedRow> Read(int most) =>
        [.. Enumerable.Range((int)Mark + 1, Math.Min(most, rows - (int)Mark)).Select(id => Row(id))];

    public FeedRow? Newest() => rows > 0 ? Row(rows) : null;

    public FeedState State() => new(rows - Mark, Mark < rows ? Row(Mark + 1).Time : null, 0, Refused.Count);

    public void Advance(IReadOnlyList<FeedRow> shipped)
    {
        Assert.Equal(Mark + 1, shipped[0].Id);
        Mark = shipped[^1].Id;
    }

    public void SetAside(FeedRow row, string reason, string point)
    {
        Assert.Equal(Mark + 1, row.Id);
        Mark = row.Id;
        Refused.Add(row.Id, reason);
    }

    private static FeedRow Row(long id) => new(id, Start.AddSeconds(id), [new("booth_temperature_c", 21.5)]);
}
