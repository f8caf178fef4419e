using BoothWatch.Jobs;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Jobs;

/// <summary>Adds and reads the entries of jobs.</summary>
internal static class JobStatements
{
    private const int MostRunning = 20;

    public static long NextJobId(SqliteConnection connection) => Scalar(connection, "SELECT ifnull(max(job_id), 0) + 1 FROM job_entry")!.Value;

    public static long NextCoatId(SqliteConnection connection) => Scalar(connection, "SELECT ifnull(max(coat_id), 0) + 1 FROM job_entry")!.Value;

    public static long? JobOfCoat(SqliteConnection connection, long coatId) =>
        Scalar(connection, "SELECT job_id FROM job_entry WHERE coat_id = $value LIMIT 1", coatId);

    public static JobEntry Insert(SqliteConnection connection, long jobId, DateTimeOffset at, string by, JobChange change)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            INSERT INTO job_entry (job_id, at_ms, entered_by, kind, coat_id, fields) VALUES ($job, $at, $by, $kind, $coat, $fields) RETURNING id
            """;
        command.Parameters.AddWithValue("$job", jobId);
        command.Parameters.AddWithValue("$at", at.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$by", by);
        command.Parameters.AddWithValue("$kind", JobEntryJson.KindOf(change));
        command.Parameters.AddWithValue("$coat", change.Coat is { } coat ? coat : DBNull.Value);
        command.Parameters.AddWithValue("$fields", JobEntryJson.Write(change));
        return new JobEntry((long)command.ExecuteScalar()!, jobId, DateTimeOffset.FromUnixTimeMilliseconds(at.ToUnixTimeMilliseconds()), by, change);
    }

    public static Job? Find(SqliteConnection connection, long jobId)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT id, at_ms, entered_by, kind, fields FROM job_entry WHERE job_id = $job ORDER BY id";
        command.Parameters.AddWithValue("$job", jobId);
        using SqliteDataReader reader = command.ExecuteReader();
        List<JobEntry> entries = [];
        while (reader.Read())
        {
            entries.Add(new JobEntry(
                reader.GetInt64(0),
                jobId,
                DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(1)),
                reader.GetString(2),
                JobEntryJson.Read(reader.GetString(3), reader.GetString(4))));
        }

        return entries.Count == 0 ? null : Job.From(entries);
    }

    public static IReadOnlyList<Job> Running(SqliteConnection connection)
    {
        List<long> ids = [];
        using (SqliteCommand command = connection.CreateCommand())
        {
            command.CommandText = "SELECT id FROM job WHERE finished_ms IS NULL ORDER BY last_entry DESC LIMIT $most";
            command.Parameters.AddWithValue("$most", MostRunning);
            using SqliteDataReader reader = command.ExecuteReader();
            while (reader.Read())
            {
                ids.Add(reader.GetInt64(0));
            }
        }

        return [.. ids.Select(id => Find(connection, id)!)];
    }

    private static long? Scalar(SqliteConnection connection, string sql, long? value = null)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        if (value is { } given)
        {
            command.Parameters.AddWithValue("$value", given);
        }

        return (long?)command.ExecuteScalar();
    }
}
