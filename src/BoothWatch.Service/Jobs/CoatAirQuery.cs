using BoothWatch.Jobs;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Jobs;

/// <summary>Sums up the air of a span from the journal: from its rows while they are kept, else from the minutes that touch it.</summary>
/// <param name="location">Where the journal lies.</param>
public sealed class CoatAirQuery(JournalLocation location)
{
    /// <summary>How long a coat without a marked end is taken to have been sprayed.</summary>
    public static readonly TimeSpan UnmarkedSpray = TimeSpan.FromMinutes(10);

    /// <summary>A longer span is summed up from minutes: it does not hang on its first and last seconds.</summary>
    private static readonly TimeSpan LongestByRows = TimeSpan.FromHours(1);

    private static readonly string FromRows = $"""
        SELECT count(*), min(verdict), {CoatAirColumns.FromRows}
        FROM reading WHERE time_ms >= $from AND time_ms < $to
        """;

    private static readonly string FromMinutes = $"""
        SELECT ifnull(sum(count), 0), min(worst_verdict),
            {CoatAirColumns.FromMinutes}
        FROM minute WHERE minute_ms > $from - {ReadingStatements.MinuteMs} AND minute_ms < $to
        """;

    /// <summary>The air while a coat was sprayed: from its start to its stop; without a stop, <see cref="UnmarkedSpray"/> or until now.</summary>
    /// <param name="coat">The coat.</param>
    /// <param name="now">The present time, UTC.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public CoatAir Of(JobCoat coat, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(coat);
        DateTimeOffset assumed = coat.Details.Start + UnmarkedSpray;
        DateTimeOffset stop = coat.Details.Stop ?? (assumed < now ? assumed : now);
        return Of(coat.Details.Start, stop);
    }

    /// <summary>The air of any span.</summary>
    /// <param name="from">Start, included, UTC.</param>
    /// <param name="to">End, not included, UTC.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public CoatAir Of(DateTimeOffset from, DateTimeOffset to)
    {
        CoatAir none = new() { From = from, To = to, Count = 0, FromRows = true };
        return to <= from ? none : JournalFile.Read(location, none, connection =>
        {
            CoatAir minutes = Sum(connection, FromMinutes, none with { FromRows = false });
            if (to - from > LongestByRows && minutes.Count > 0)
            {
                return minutes;
            }

            CoatAir rows = Sum(connection, FromRows, none);
            long whole = SeriesQuery.RowsSummarised(connection, from.ToUnixTimeMilliseconds(), to.ToUnixTimeMilliseconds(), hasHours: false);
            return rows.Count >= whole && rows.Count > 0 ? rows : minutes.Count > 0 ? minutes : none;
        });
    }

    private static CoatAir Sum(SqliteConnection connection, string sql, CoatAir span)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        Bound(command, span.From, span.To);
        using SqliteDataReader reader = command.ExecuteReader();
        reader.Read();
        return CoatAirColumns.Read(reader, 0, span);
    }

    private static void Bound(SqliteCommand command, DateTimeOffset from, DateTimeOffset to)
    {
        command.Parameters.AddWithValue("$from", from.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$to", to.ToUnixTimeMilliseconds());
    }
}
