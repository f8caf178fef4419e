using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>Reads the journal file over a connection of its own, which never holds up the writer.</summary>
internal static class JournalFile
{
    /// <summary>Runs a query on one consistent view of the journal.</summary>
    /// <param name="location">Where it lies.</param>
    /// <param name="empty">The answer for a journal that has not been written yet.</param>
    /// <param name="query">The query.</param>
    /// <param name="leastVersion">A journal of an older version, not migrated yet, counts as not written.</param>
    /// <exception cref="JournalException">It cannot be read; the message names the file and the fix.</exception>
    public static T Read<T>(JournalLocation location, T empty, Func<SqliteConnection, T> query, int leastVersion = 1)
    {
        if (!File.Exists(location.Path))
        {
            return empty;
        }

        try
        {
            using var connection = new SqliteConnection(new SqliteConnectionStringBuilder
            {
                DataSource = location.Path,
                Mode = SqliteOpenMode.ReadOnly,
                Pooling = false,
                DefaultTimeout = 5,
            }.ToString());
            connection.Open();
            if (JournalSchema.VersionOf(connection) < leastVersion)
            {
                return empty;
            }

            using SqliteTransaction snapshot = connection.BeginTransaction(deferred: true);
            return query(connection);
        }
        catch (SqliteException e)
        {
            throw new JournalException(JournalTrouble.Explain(e, location.Path), e);
        }
    }
}
