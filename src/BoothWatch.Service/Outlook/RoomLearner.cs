using BoothWatch.Outlook;

namespace BoothWatch.Service.Outlook;

/// <summary>
/// Learns how the booth follows its intake, from the times the fan was switched on. A day of rows is read once, when it is over, a few hours at a
/// time and one day a renewal, so that a month of rows never holds anything up; of each day only the minutes after the steps are kept.
/// </summary>
/// <param name="query">Reads the rows.</param>
internal sealed class RoomLearner(RoomQuery query)
{
    /// <summary>Days that are learned from: rows of older ones are usually gone.</summary>
    public const int Days = 21;

    private static readonly TimeSpan Part = TimeSpan.FromHours(3);

    private readonly Dictionary<DateOnly, IReadOnlyList<IReadOnlyList<RoomPoint>>> _days = [];
    private bool _isStale;

    /// <summary>What is learned so far; null while it is too little, or does no better than "as it is now".</summary>
    public RoomModel? Model { get; private set; }

    /// <summary>Reads one more day, the newest that was not read yet.</summary>
    /// <param name="today">Days before this one (in UTC) are over.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public void ReadOneDay(DateOnly today, CancellationToken cancellationToken)
    {
        foreach (DateOnly old in _days.Keys.Where(date => date < today.AddDays(-Days) || date >= today).ToList())
        {
            _isStale |= _days[old].Count > 0;
            _days.Remove(old);
        }

        DateOnly? next = Enumerable.Range(1, Days).Select(back => today.AddDays(-back)).Where(date => !_days.ContainsKey(date)).Cast<DateOnly?>().FirstOrDefault();
        if (next is { } date)
        {
            _days.Add(date, FanSteps.Of(Minutes(date, cancellationToken)));
            _isStale |= _days[date].Count > 0;
        }

        if (_isStale)
        {
            Model = RoomModel.Learn(_days.OrderBy(day => day.Key).SelectMany(day => day.Value));
            _isStale = false;
        }
    }

    private List<RoomMinute> Minutes(DateOnly date, CancellationToken cancellationToken)
    {
        DateTimeOffset from = new(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
        List<RoomMinute> minutes = [];
        for (DateTimeOffset part = from; part < from.AddDays(1); part += Part)
        {
            cancellationToken.ThrowIfCancellationRequested();
            double sinceH = (part - from).TotalHours;
            minutes.AddRange(query.Read(part, part + Part, 1).Select(minute => minute with { AtH = minute.AtH + sinceH }));
        }

        return minutes;
    }
}
