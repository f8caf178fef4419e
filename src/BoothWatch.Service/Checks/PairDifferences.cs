using System.Globalization;
using BoothWatch.Checks;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Checks;

/// <summary>
/// Keeps how far apart two sensors of one quantity are, an hour at a time, and says when they grow apart. What the journal does not take is dropped:
/// an hour more or less says little of months. Used by one thread, read by several.
/// </summary>
/// <param name="journal">The journal.</param>
/// <param name="location">Where it lies.</param>
/// <param name="time">The clock.</param>
internal sealed class PairDifferences(Journal journal, JournalLocation location, TimeProvider time)
{
    private const long HourMs = 3_600_000;

    private readonly Dictionary<(Quantity Quantity, string First, string Second), Sum> _sums = [];
    private long? _hour;
    private volatile IReadOnlyDictionary<string, Cause> _words = new Dictionary<string, Cause>();

    /// <summary>What is to be said of a sensor that grows apart from its neighbour; null when nothing is.</summary>
    public Cause? Of(string sensor) => _words.GetValueOrDefault(sensor);

    /// <summary>Takes what the sensors read now.</summary>
    public void Take(BoothSnapshot snapshot)
    {
        long hour = time.GetUtcNow().ToUnixTimeMilliseconds() / HourMs * HourMs;
        if (hour != _hour && snapshot.ClockProven)
        {
            Close();
            _hour = hour;
        }

        foreach (Reading second in snapshot.Others.Where(other => other.IsGood))
        {
            if (snapshot[second.Quantity] is { IsGood: true } first)
            {
                double limit = new SensorPair(QuantityJudge.ToleranceOf(second.Quantity), TimeSpan.Zero).LimitOf(first, second);
                (Quantity, string, string) key = (second.Quantity, first.Sensor, second.Sensor);
                Sum sum = _sums.GetValueOrDefault(key) ?? new Sum();
                _sums[key] = sum with { Count = sum.Count + 1, Total = sum.Total + first.Value!.Value - second.Value!.Value, Limit = limit };
            }
        }
    }

    private void Close()
    {
        try
        {
            if (_hour is { } hour && _sums.Count > 0)
            {
                journal.Write(durable: false, connection =>
                {
                    foreach (((Quantity quantity, string first, string second), Sum sum) in _sums)
                    {
                        Insert(connection, hour, quantity, first, second, sum);
                    }
                });
            }

            Dictionary<string, Cause> words = [];
            foreach (((Quantity quantity, string first, string second), Sum sum) in _sums)
            {
                if (Divergence.Of(Hours(quantity, first, second), time.GetUtcNow(), sum.Limit) is { IsSlow: true } slow)
                {
                    words[first] = words[second] = Words(quantity, first, second, slow);
                }
            }

            _words = words;
        }
        catch (JournalException)
        {
            // Said by the journal's own output already.
        }

        _sums.Clear();
    }

    private static Cause Words(Quantity quantity, string first, string second, Divergence slow)
    {
        string more = slow.LastWeek < 0 ? "less" : "more";
        object now = Size(slow.LastWeek);
        object limit = Size(slow.Limit);
        return slow.Change is { } change
            ? new Cause($"{first} reads {now} {more} than {second} over the last week, and the two have moved apart by {Size(change)} since the first week on record; from {limit} on they disagree, which means wait: check both")
            : new Cause($"{first} reads {now} {more} than {second} over the last week; from {limit} on they disagree, which means wait: check both");

        object Size(double difference) => QuantityUnit.Of(quantity) == "°C"
            ? new Degrees(Math.Round(Math.Abs(difference), 1), IsDifference: true)
            : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(difference):0.0} {QuantityUnit.Of(quantity)}");
    }

    // Part of the file format, as the letters of qualities are.
    private static string ColumnOf(Quantity quantity) => QualityCodes.Quantities.First(known => known.Quantity == quantity).Column;

    private static void Insert(SqliteConnection connection, long hour, Quantity quantity, string first, string second, Sum sum)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            INSERT INTO sensor_difference (hour_ms, quantity, first, second, count, mean) VALUES ($hour, $quantity, $first, $second, $count, $mean)
            ON CONFLICT DO UPDATE SET mean = (mean * count + excluded.mean * excluded.count) / (count + excluded.count), count = count + excluded.count
            """;
        command.Parameters.AddWithValue("$hour", hour);
        command.Parameters.AddWithValue("$quantity", ColumnOf(quantity));
        command.Parameters.AddWithValue("$first", first);
        command.Parameters.AddWithValue("$second", second);
        command.Parameters.AddWithValue("$count", sum.Count);
        command.Parameters.AddWithValue("$mean", sum.Total / sum.Count);
        command.ExecuteNonQuery();
    }

    // Since either part was replaced: an earlier one differed for reasons of its own.
    private HourDifference[] Hours(Quantity quantity, string first, string second) => JournalFile.Read<HourDifference[]>(location, [], connection =>
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            SELECT hour_ms, mean FROM sensor_difference
            WHERE quantity = $quantity AND first = $first AND second = $second
                AND hour_ms > (SELECT ifnull(max(at_ms), 0) FROM sensor_check_entry WHERE kind = 'replaced' AND sensor IN ($first, $second))
            """;
        command.Parameters.AddWithValue("$quantity", ColumnOf(quantity));
        command.Parameters.AddWithValue("$first", first);
        command.Parameters.AddWithValue("$second", second);
        using SqliteDataReader reader = command.ExecuteReader();
        List<HourDifference> hours = [];
        while (reader.Read())
        {
            hours.Add(new HourDifference(DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(0)), reader.GetDouble(1)));
        }

        return [.. hours];
    }, JournalSchema.ChecksVersion);

    private sealed record Sum(int Count = 0, double Total = 0, double Limit = 0);
}
