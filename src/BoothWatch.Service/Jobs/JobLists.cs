using BoothWatch.Film;
using BoothWatch.Jobs;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Jobs;

/// <summary>The lists that searches read: one row a job and one a coat, written anew from the entries whenever a job changes.</summary>
internal static class JobLists
{
    public static void Rewrite(SqliteConnection connection, Job job)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            INSERT OR REPLACE INTO job (id, last_entry, started_ms, finished_ms, piece, piece_folded, finish, is_demo)
            VALUES ($id, $last, $started, $finished, $piece, $folded, $finish, $demo);
            DELETE FROM coat WHERE job_id = $id;
            """;
        bool demo = job.Entries[0].By == EntrySource.Demo;
        command.Parameters.AddWithValue("$id", job.Id);
        command.Parameters.AddWithValue("$last", job.Entries[^1].Id);
        command.Parameters.AddWithValue("$started", job.Started.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$finished", OrNull(job.Finished?.ToUnixTimeMilliseconds()));
        command.Parameters.AddWithValue("$piece", job.Details.Piece);
        command.Parameters.AddWithValue("$folded", Fold(job.Details.Piece));
        command.Parameters.AddWithValue("$finish", job.Details.Finish);
        command.Parameters.AddWithValue("$demo", demo ? 1 : 0);
        command.ExecuteNonQuery();
        foreach (JobCoat coat in job.Coats)
        {
            Insert(connection, coat);
        }
    }

    public static RowPage<JobRow> Jobs(SqliteConnection connection, JobQuery query)
    {
        using SqliteCommand command = connection.CreateCommand();
        Where where = new(command);
        where.Add("started_ms >= $from", "$from", query.From?.ToUnixTimeMilliseconds());
        where.Add("started_ms < $to", "$to", query.To?.ToUnixTimeMilliseconds());
        where.Add("instr(piece_folded, $piece) > 0", "$piece", Folded(query.Piece));
        where.AddIf(query.Running is not null, query.Running is true ? "finished_ms IS NULL" : "finished_ms IS NOT NULL");
        int total = Count(command, $"SELECT count(*) FROM job {where}");
        command.CommandText = $"""
            SELECT id, piece, finish, started_ms, finished_ms, is_demo,
                (SELECT count(*) FROM coat WHERE job_id = job.id),
                (SELECT count(*) FROM coat WHERE job_id = job.id AND outcome = {(int)CoatOutcome.Blushed}),
                (SELECT min(margin_c) FROM coat WHERE job_id = job.id)
            FROM job {where} ORDER BY started_ms DESC, id DESC LIMIT $take OFFSET $skip
            """;
        return new RowPage<JobRow>(total, Rows(command, query.Skip, query.Take, reader => new JobRow(
            reader.GetInt64(0),
            reader.GetString(1),
            reader.GetString(2),
            Time(reader, 3),
            reader.IsDBNull(4) ? null : Time(reader, 4),
            reader.GetInt32(6),
            reader.GetInt32(7),
            reader.IsDBNull(8) ? null : reader.GetDouble(8),
            reader.GetInt32(5) != 0)));
    }

    public static RowPage<CoatRow> Coats(SqliteConnection connection, CoatQuery query)
    {
        using SqliteCommand command = connection.CreateCommand();
        Where where = new(command);
        where.Add("coat.start_ms >= $from", "$from", query.From?.ToUnixTimeMilliseconds());
        where.Add("coat.start_ms < $to", "$to", query.To?.ToUnixTimeMilliseconds());
        where.Add("instr(job.piece_folded, $piece) > 0", "$piece", Folded(query.Piece));
        where.Add("coat.job_id = $job", "$job", query.JobId);
        where.Add("coat.kind = $kind", "$kind", (int?)query.Kind);
        where.Add("coat.outcome = $outcome", "$outcome", (int?)query.Outcome);
        where.AddIf(query.OutcomeKnown, "coat.outcome IS NOT NULL");
        where.Add("coat.margin_c >= $least", "$least", query.MarginFromC);
        where.Add("coat.margin_c <= $most", "$most", query.MarginToC);
        int total = Count(command, $"SELECT count(*) FROM coat JOIN job ON job.id = coat.job_id {where}");
        command.CommandText = $"""
            SELECT coat.id, coat.job_id, coat.place, job.piece, coat.kind, coat.start_ms, coat.stop_ms, coat.retarder_pct, coat.wet_film_um,
                coat.margin_c, coat.margin_uncertainty_c, coat.outcome, job.is_demo
            FROM coat JOIN job ON job.id = coat.job_id {where} ORDER BY coat.start_ms DESC, coat.id DESC LIMIT $take OFFSET $skip
            """;
        return new RowPage<CoatRow>(total, Rows(command, query.Skip, query.Take, reader => new CoatRow(
            reader.GetInt64(0),
            reader.GetInt64(1),
            reader.GetInt32(2),
            reader.GetString(3),
            (CoatKind)reader.GetInt32(4),
            Time(reader, 5),
            reader.IsDBNull(6) ? null : Time(reader, 6),
            reader.GetDouble(7),
            reader.GetDouble(8),
            reader.IsDBNull(9) ? null : reader.GetDouble(9),
            reader.IsDBNull(10) ? null : reader.GetDouble(10),
            reader.IsDBNull(11) ? null : (CoatOutcome)reader.GetInt32(11),
            reader.GetInt32(12) != 0)));
    }

    private static void Insert(SqliteConnection connection, JobCoat coat)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            INSERT INTO coat (id, job_id, place, kind, start_ms, stop_ms, retarder_pct, wet_film_um, margin_c, margin_uncertainty_c, outcome)
            VALUES ($id, $job, $place, $kind, $start, $stop, $retarder, $film, $margin, $uncertainty, $outcome)
            """;
        command.Parameters.AddWithValue("$id", coat.Id);
        command.Parameters.AddWithValue("$job", coat.JobId);
        command.Parameters.AddWithValue("$place", coat.Place);
        command.Parameters.AddWithValue("$kind", (int)coat.Details.Kind);
        command.Parameters.AddWithValue("$start", coat.Details.Start.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$stop", OrNull(coat.Details.Stop?.ToUnixTimeMilliseconds()));
        command.Parameters.AddWithValue("$retarder", coat.Details.Mix.RetarderPct);
        command.Parameters.AddWithValue("$film", coat.Details.WetFilmUm);
        command.Parameters.AddWithValue("$margin", OrNull(coat.Moment?.BlushMarginC));
        command.Parameters.AddWithValue("$uncertainty", OrNull(coat.Moment?.MarginUncertaintyC));
        command.Parameters.AddWithValue("$outcome", OrNull((int?)coat.Outcome));
        command.ExecuteNonQuery();
    }

    private static object OrNull<T>(T? value)
        where T : struct => value is { } given ? given : DBNull.Value;

    private static string Fold(string text) => text.ToLowerInvariant();

    private static string? Folded(string? text) => string.IsNullOrWhiteSpace(text) ? null : Fold(text.Trim());

    private static DateTimeOffset Time(SqliteDataReader reader, int column) => DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(column));

    private static int Count(SqliteCommand command, string sql)
    {
        command.CommandText = sql;
        return (int)(long)command.ExecuteScalar()!;
    }

    private static List<T> Rows<T>(SqliteCommand command, int skip, int take, Func<SqliteDataReader, T> row)
    {
        command.Parameters.AddWithValue("$skip", Math.Max(0, skip));
        command.Parameters.AddWithValue("$take", Math.Clamp(take, 1, JobQuery.MostRows));
        using SqliteDataReader reader = command.ExecuteReader();
        List<T> rows = [];
        while (reader.Read())
        {
            rows.Add(row(reader));
        }

        return rows;
    }

    /// <summary>Conditions with their parameters; a null value adds none.</summary>
    private sealed class Where(SqliteCommand command)
    {
        private readonly List<string> _conditions = [];

        public void Add(string condition, string parameter, object? value)
        {
            if (value is not null)
            {
                _conditions.Add(condition);
                command.Parameters.AddWithValue(parameter, value);
            }
        }

        public void AddIf(bool holds, string condition)
        {
            if (holds)
            {
                _conditions.Add(condition);
            }
        }

        public override string ToString() => _conditions.Count == 0 ? "" : "WHERE " + string.Join(" AND ", _conditions);
    }
}
