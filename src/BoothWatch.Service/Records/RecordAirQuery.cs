using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Records;

/// <summary>
/// Reads the air of a record from the minutes of the journal. Not from its single rows: those are cleared after some weeks, and a record
/// written out again years later has to hold the same figures.
/// </summary>
/// <param name="location">Where the journal lies.</param>
public sealed class RecordAirQuery(JournalLocation location)
{
    private static readonly string Sql = $"""
        SELECT (minute_ms - $from) / $step, sum(count), min(worst_verdict),
            {CoatAirColumns.FromMinutes}
        FROM minute WHERE minute_ms >= $from AND minute_ms < $to GROUP BY 1 ORDER BY 1
        """;

    /// <summary>The air while a coat was sprayed, from the minute in which it began to the end of the one in which it ended.</summary>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public CoatAir Of(JobCoat coat)
    {
        ArgumentNullException.ThrowIfNull(coat);
        const long minuteMs = ReadingStatements.MinuteMs;
        long fromMs = coat.Details.Start.ToUnixTimeMilliseconds() / minuteMs * minuteMs;
        long toMs = ((RecordSpan.StopOf(coat.Details).ToUnixTimeMilliseconds() / minuteMs) + 1) * minuteMs;
        CoatAir none = new() { From = Time(fromMs), To = Time(toMs), Count = 0, FromRows = false };
        return Read(fromMs, toMs, toMs - fromMs).SingleOrDefault() ?? none;
    }

    /// <summary>The air of a span, step by step.</summary>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public AirStretch Of(RecordSpan span)
    {
        ArgumentNullException.ThrowIfNull(span);
        IReadOnlyList<CoatAir> steps = Read(span.From.ToUnixTimeMilliseconds(), span.To.ToUnixTimeMilliseconds(), (long)span.Step.TotalMilliseconds);
        return new AirStretch(span.From, span.To, (int)span.Step.TotalSeconds,
        [
            .. steps.Select(step => new AirPoint(
                step.From, step.TemperatureC?.Mean, step.RelativeHumidityPct?.Mean, step.DewPointC?.Mean, step.PieceTemperatureC?.Mean, step.WorstVerdict!.Value)),
        ]);
    }

    private IReadOnlyList<CoatAir> Read(long fromMs, long toMs, long stepMs) => JournalFile.Read<IReadOnlyList<CoatAir>>(location, [], connection =>
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = Sql;
        command.Parameters.AddWithValue("$from", fromMs);
        command.Parameters.AddWithValue("$to", toMs);
        command.Parameters.AddWithValue("$step", stepMs);
        using SqliteDataReader reader = command.ExecuteReader();
        List<CoatAir> steps = [];
        while (reader.Read())
        {
            long startMs = fromMs + (reader.GetInt64(0) * stepMs);
            CoatAir step = new() { From = Time(startMs), To = Time(startMs + stepMs), Count = 0, FromRows = false };
            steps.Add(CoatAirColumns.Read(reader, 1, step));
        }

        return steps;
    });

    private static DateTimeOffset Time(long ms) => DateTimeOffset.FromUnixTimeMilliseconds(ms);
}
