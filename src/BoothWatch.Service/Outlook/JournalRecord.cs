using BoothWatch.Outlook;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outlook;

/// <summary>
/// The earlier days from the minutes of the journal. A day is read once, when it is over, in a query of its own, and kept as the 144 values
/// of an <see cref="AirDay"/>: a month takes 35 kB, however long the journal.
/// </summary>
/// <param name="location">Where the journal lies.</param>
/// <param name="zone">The shop's time zone.</param>
internal sealed class JournalRecord(JournalLocation location, TimeZoneInfo zone) : IOutlookRecord
{
    private const long SlotMs = AirDay.SlotMinutes * ReadingStatements.MinuteMs;

    private static readonly string Slots = $"""
        SELECT (minute_ms - $from) / {SlotMs} AS slot, avg(booth_temperature_c_mean), avg(dew_point_c_mean)
        FROM minute WHERE minute_ms >= $from AND minute_ms < $to AND booth_temperature_c_n > 0 AND dew_point_c_n > 0
        GROUP BY slot ORDER BY slot
        """;

    private readonly Dictionary<DateOnly, AirDay> _days = [];

    public bool IsInvented => false;

    public AirPast Before(DateOnly today, int most, CancellationToken cancellationToken)
    {
        DateOnly first = today.AddDays(-most);
        foreach (DateOnly old in _days.Keys.Where(date => date < first || date >= today).ToList())
        {
            _days.Remove(old);
        }

        for (DateOnly date = first; date < today; date = date.AddDays(1))
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (!_days.ContainsKey(date))
            {
                _days.Add(date, Read(date));
            }
        }

        return new AirPast(_days.Values.Where(day => day.Recorded > 0));
    }

    private AirDay Read(DateOnly date) => JournalFile.Read(location, new AirDay(date), connection =>
    {
        DateTimeOffset from = MidnightOf(date);
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = Slots;
        command.Parameters.AddWithValue("$from", from.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$to", MidnightOf(date.AddDays(1)).ToUnixTimeMilliseconds());
        using SqliteDataReader reader = command.ExecuteReader();
        AirDay day = new(date);
        while (reader.Read())
        {
            // By the clock on the wall: where it was set back an hour comes twice, and the later one stays.
            DateTimeOffset at = TimeZoneInfo.ConvertTime(from.AddMilliseconds(reader.GetInt64(0) * SlotMs), zone);
            day[AirDay.SlotOf(at.TimeOfDay)] = new OutlookAir(reader.GetDouble(1), reader.GetDouble(2));
        }

        return day;
    });

    /// <summary>When a day of the shop begins; where the clock is set forward over midnight, with the first time that there is.</summary>
    private DateTimeOffset MidnightOf(DateOnly date)
    {
        DateTime midnight = date.ToDateTime(TimeOnly.MinValue);
        while (zone.IsInvalidTime(midnight))
        {
            midnight = midnight.AddMinutes(AirDay.SlotMinutes);
        }

        return new DateTimeOffset(midnight, zone.GetUtcOffset(midnight)).ToUniversalTime();
    }
}
