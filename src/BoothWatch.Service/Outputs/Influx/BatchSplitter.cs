namespace BoothWatch.Service.Outputs.Influx;

/// <summary>
/// Writes a batch, and when the server refuses it finds the points at fault by halving: each is set aside with the reason,
/// all others are written. The mark moves with every part that is done, in order.
/// </summary>
/// <remarks>
/// A server that refuses everything is no matter of the points, so after <see cref="RefusedInARow"/> refusals in a row the
/// newest row is tried: only when the server takes that one does setting aside go on.
/// </remarks>
/// <param name="writer">Where to.</param>
/// <param name="points">How a row becomes a point.</param>
/// <param name="onSetAside">Told of a point set aside: measurement, row and reason.</param>
public sealed class BatchSplitter(IPointWriter writer, Points points, Action<string, long, string> onSetAside)
{
    /// <summary>Refusals in a row after which the server, not the points, is suspected.</summary>
    public const int RefusedInARow = 20;

    private int _refusedInARow;

    /// <summary>Writes rows of one feed.</summary>
    /// <param name="feed">Whose mark moves.</param>
    /// <param name="rows">The rows, at least one.</param>
    /// <param name="onShipped">Told how many rows the server took.</param>
    /// <param name="cancellationToken">To give up.</param>
    /// <returns>Accepted when the mark stands behind all rows; else why it could go no further.</returns>
    public async Task<WriteAnswer> ShipAsync(IJournalFeed feed, IReadOnlyList<FeedRow> rows, Action<int> onShipped, CancellationToken cancellationToken)
    {
        string[] lines = [.. rows.Select(row => points.Line(feed.Measurement, row))];
        var waiting = new Stack<Range>([Range.All]);
        while (waiting.TryPop(out Range range))
        {
            (int start, int count) = range.GetOffsetAndLength(rows.Count);
            WriteAnswer answer = await writer.WriteAsync(lines[range], cancellationToken);
            if (answer.Kind == WriteAnswerKind.Accepted)
            {
                _refusedInARow = 0;
                feed.Advance([.. rows.Skip(start).Take(count)]);
                onShipped(count);
            }
            else if (answer.Kind == WriteAnswerKind.TryLater)
            {
                return answer;
            }
            else if (count > 1)
            {
                int middle = start + (count / 2);
                waiting.Push(middle..(start + count));
                waiting.Push(start..middle);
            }
            else if (++_refusedInARow > RefusedInARow && await RefusesAllAsync(feed, cancellationToken) is { } all)
            {
                return all;
            }
            else
            {
                feed.SetAside(rows[start], answer.Text, lines[start]);
                onSetAside(feed.Measurement, rows[start].Id, answer.Text);
            }
        }

        return WriteAnswer.Accepted;
    }

    private async Task<WriteAnswer?> RefusesAllAsync(IJournalFeed feed, CancellationToken cancellationToken)
    {
        if (feed.Newest() is not { } newest)
        {
            return null;
        }

        WriteAnswer answer = await writer.WriteAsync([points.Line(feed.Measurement, newest)], cancellationToken);
        if (answer.Kind == WriteAnswerKind.Accepted)
        {
            _refusedInARow = 0;
            return null;
        }

        return answer with { Kind = WriteAnswerKind.TryLater, Text = $"the server refuses every point, the newest too ({answer.Text})" };
    }
}
