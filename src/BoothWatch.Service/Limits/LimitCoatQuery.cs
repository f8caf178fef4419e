using System.Globalization;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Limits;

/// <summary>Reads the coats that count from the journal, as they stand after every correction and undo.</summary>
/// <param name="location">The journal. Invented coats of the demo count in its own journal only.</param>
/// <param name="options">From when on coats count.</param>
/// <param name="time">The clock and the shop's time zone.</param>
public sealed class LimitCoatQuery(JournalLocation location, IOptions<LimitOptions> options, TimeProvider time)
{
    /// <summary>More coats say no more: the newest are taken.</summary>
    public const int MostCoats = 1000;

    /// <summary>Reads them.</summary>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public LimitEvidence Read()
    {
        DateTimeOffset now = time.GetUtcNow();
        DateTimeOffset from = From(now);
        LimitEvidence none = new(from, [], 0, 0, 0);
        return JournalFile.Read(location, none, connection => Read(connection, from, now), JobStore.LeastVersion);
    }

    private DateTimeOffset From(DateTimeOffset now)
    {
        DateTimeOffset window = now.AddDays(-options.Value.WindowDays);
        if (!DateOnly.TryParseExact(options.Value.Since, LimitOptionsValidator.DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly since))
        {
            return window;
        }

        DateTime day = since.ToDateTime(TimeOnly.MinValue);
        DateTimeOffset start = new DateTimeOffset(day, time.LocalTimeZone.GetUtcOffset(day)).ToUniversalTime();
        return start > window ? start : window;
    }

    private LimitEvidence Read(SqliteConnection connection, DateTimeOffset from, DateTimeOffset now)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            SELECT coat.id, coat.job_id, coat.start_ms, coat.margin_c, coat.margin_uncertainty_c, coat.outcome
            FROM coat JOIN job ON job.id = coat.job_id
            WHERE coat.start_ms >= $from AND coat.start_ms <= $now AND job.is_demo <= $demo
            ORDER BY coat.start_ms DESC, coat.id DESC
            """;
        command.Parameters.AddWithValue("$from", from.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$now", now.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$demo", location.IsDemo ? 1 : 0);
        List<LimitEvidenceCoat> coats = [];
        (int notMarked, int drySpray, int airNotKnown) = (0, 0, 0);
        using SqliteDataReader reader = command.ExecuteReader();
        while (coats.Count < MostCoats && reader.Read())
        {
            if (reader.IsDBNull(3) || reader.IsDBNull(4))
            {
                airNotKnown++;
                continue;
            }

            if (reader.IsDBNull(5))
            {
                notMarked++;
                continue;
            }

            CoatOutcome outcome = (CoatOutcome)reader.GetInt32(5);
            if (outcome == CoatOutcome.DrySpray)
            {
                drySpray++;
                continue;
            }

            coats.Add(new LimitEvidenceCoat(
                reader.GetInt64(0), reader.GetInt64(1), DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(2)), reader.GetDouble(3), reader.GetDouble(4), outcome));
        }

        return new LimitEvidence(from, coats, notMarked, drySpray, airNotKnown);
    }
}
