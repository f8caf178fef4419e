using System.Globalization;
using System.Text.RegularExpressions;
using BoothWatch.Service.Outputs.Influx;
using FsCheck.Xunit;

namespace BoothWatch.Service.Tests.Outputs.Influx;

public sealed partial class BatchSplitterTests
{
    private readonly ListWriter _writer = new();
    private readonly List<long> _reported = [];

    [Fact]
    public async Task Ship_WithOneRefusedPointInAThousand_SetsThatOneAsideAndWritesTheRestOnce()
    {
        var feed = new MemoryFeed(1000);
        _writer.Answer = lines => lines.Any(line => RowOf(line) == 637) ? Refused : WriteAnswer.Accepted;

        WriteAnswer answer = await ShipAsync(feed, 1000);

        Assert.Equal(WriteAnswerKind.Accepted, answer.Kind);
        Assert.Equal(1000, feed.Mark);
        Assert.Equal([637], feed.Refused.Keys);
        Assert.Equal(Refused.Text, feed.Refused[637]);
        Assert.Equal([637], _reported);
        Assert.Equal(999, _writer.Stored.Count);
        Assert.All(_writer.Stored.Values, times => Assert.Equal(1, times));

        // Halving 1000 down to one takes at most ten levels of two requests, and the first.
        Assert.InRange(_writer.Requests.Count, 2, 21);
    }

    [Property(MaxTest = 60)]
    public void Ship_WithAnyPointsRefused_WritesOrSetsAsideEachExactlyOnce(int rows, long[] bad)
    {
        rows = 1 + Math.Abs(rows % 200);
        HashSet<long> refused = [.. bad.Select(id => 1 + Math.Abs(id % rows))];
        var feed = new MemoryFeed(rows);
        var writer = new ListWriter { Answer = lines => lines.Any(line => refused.Contains(RowOf(line))) ? Refused : WriteAnswer.Accepted };

        // The newest row may be tried once more, so that one may be stored twice; a database replaces it.
        WriteAnswer answer = new BatchSplitter(writer, new Points(ShippingBench.Tags), (_, _, _) => { })
            .ShipAsync(feed, feed.Read(rows), _ => { }, CancellationToken.None).GetAwaiter().GetResult();

        long[] done = [.. writer.Stored.Keys.Select(RowOf).Concat(feed.Refused.Keys).Distinct().Order()];
        if (answer.Kind == WriteAnswerKind.Accepted)
        {
            Assert.Equal(Enumerable.Range(1, rows).Select(id => (long)id), done);
            Assert.Equal(refused.Order(), feed.Refused.Keys.Order());
        }
        else
        {
            // Only when the newest is refused too, after a long run of refusals.
            Assert.Contains(rows, refused);
            Assert.True(refused.Count > BatchSplitter.RefusedInARow);
        }
    }

    [Fact]
    public async Task Ship_ToAServerThatRefusesEverything_StopsAndSetsNoMoreAside()
    {
        var feed = new MemoryFeed(5000);
        _writer.Answer = _ => Refused;

        WriteAnswer first = await ShipAsync(feed, 5000);
        WriteAnswer again = await ShipAsync(feed, 5000);

        Assert.Equal(WriteAnswerKind.TryLater, first.Kind);
        Assert.Equal(WriteAnswerKind.TryLater, again.Kind);
        Assert.Contains("refuses every point", again.Text, StringComparison.Ordinal);
        Assert.Equal(BatchSplitter.RefusedInARow, feed.Refused.Count);
    }

    [Fact]
    public async Task Ship_WithALongRunOfRefusedPoints_GoesOnWhenTheNewestIsTaken()
    {
        var feed = new MemoryFeed(300);
        _writer.Answer = lines => lines.Any(line => RowOf(line) is > 20 and <= 120) ? Refused : WriteAnswer.Accepted;

        WriteAnswer answer = await ShipAsync(feed, 300);

        Assert.Equal(WriteAnswerKind.Accepted, answer.Kind);
        Assert.Equal(100, feed.Refused.Count);
        Assert.Equal(200, _writer.Stored.Count);
    }

    [Fact]
    public async Task Ship_WhenTheServerGoesAwayHalfway_KeepsTheMarkWhereItGot()
    {
        var feed = new MemoryFeed(100);
        _writer.Answer = lines => _writer.Requests.Count > 3 ? new WriteAnswer(WriteAnswerKind.TryLater, "gone")
            : lines.Any(line => RowOf(line) == 99) ? Refused : WriteAnswer.Accepted;

        WriteAnswer answer = await ShipAsync(feed, 100);

        Assert.Equal(WriteAnswerKind.TryLater, answer.Kind);
        Assert.Equal(50, feed.Mark);
        Assert.Empty(feed.Refused);
    }

    private static WriteAnswer Refused { get; } = new(WriteAnswerKind.Refused, "422: field type conflict");

    private static long RowOf(string line) => long.Parse(RowId().Match(line).Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"row_id=(\d+)i")]
    private static partial Regex RowId();

    private Task<WriteAnswer> ShipAsync(MemoryFeed feed, int most) =>
        (_splitter ??= new BatchSplitter(_writer, new Points(ShippingBench.Tags), (_, row, _) => _reported.Add(row)))
            .ShipAsync(feed, feed.Read(most), _ => { }, CancellationToken.None);

    private BatchSplitter? _splitter;
}
