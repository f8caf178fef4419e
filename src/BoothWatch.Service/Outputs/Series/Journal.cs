using System.Globalization;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>
/// The journal file and its one writing connection. Opens, migrates and, after damage, sets the file aside and
/// starts a new one; nothing is ever deleted. Safe for several threads, which take turns.
/// </summary>
/// <remarks>
/// WAL with synchronous NORMAL: a committed transaction is safe from the death of the process at once. From loss of
/// power it is safe once the write-ahead log has been forced to the disk, which happens here at the first commit after
/// <c>syncEvery</c> and at every commit that asks for it, by raising synchronous to FULL for that commit.
/// Source: https://www.sqlite.org/pragma.html#pragma_synchronous and https://www.sqlite.org/wal.html
/// </remarks>
public sealed partial class Journal : IDisposable
{
    private readonly TimeSpan _syncEvery;
    private readonly TimeProvider _time;
    private readonly ILogger<Journal> _logger;
    private readonly Lock _gate = new();
    private SqliteConnection? _connection;
    private bool _suspect;
    private bool? _forcing;
    private long _lastForced;

    /// <summary>The journal at a location. Nothing is opened before the first write.</summary>
    /// <param name="location">Where it lies.</param>
    /// <param name="syncEvery">Longest time between forced writes to the disk.</param>
    /// <param name="time">The clock.</param>
    /// <param name="logger">Where to say what happened to the file.</param>
    public Journal(JournalLocation location, TimeSpan syncEvery, TimeProvider time, ILogger<Journal> logger)
    {
        (FilePath, _syncEvery, _time, _logger) = (location.Path, syncEvery, time, logger);
        _lastForced = time.GetTimestamp();
    }

    /// <summary>Full path of the database file.</summary>
    public string FilePath { get; }

    /// <summary>Runs <paramref name="work"/> in one transaction: all of it is in the journal afterwards, or nothing.</summary>
    /// <param name="durable">True to force this transaction to the disk before returning.</param>
    /// <param name="work">The statements; commands created on the connection take part in the transaction.</param>
    /// <exception cref="JournalException">It could not be written; the message names the file and the fix.</exception>
    public void Write(bool durable, Action<SqliteConnection> work)
    {
        lock (_gate)
        {
            try
            {
                SqliteConnection connection = _connection ??= Open();
                bool force = durable || _time.GetElapsedTime(_lastForced) >= _syncEvery;
                SetForcing(connection, force);
                using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);
                work(connection);
                transaction.Commit();
                if (force)
                {
                    _lastForced = _time.GetTimestamp();
                }
            }
            catch (SqliteException e)
            {
                CloseUnlessIntact(e);
                throw new JournalException(JournalTrouble.Explain(e, FilePath), e);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                Close();
                throw new JournalException(JournalTrouble.Explain(e, FilePath), e);
            }
        }
    }

    /// <summary>Closes the file; the log is merged into it.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            Close();
        }
    }

    private static string ConnectionString(string path) => new SqliteConnectionStringBuilder
    {
        DataSource = path,
        Mode = SqliteOpenMode.ReadWriteCreate,
        Pooling = false,
        ForeignKeys = true,
        DefaultTimeout = 5,
    }.ToString();

    private static void Execute(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private SqliteConnection Open()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(FilePath)!);

        // A log left behind means that the last run did not end by itself: look before trusting the file.
        var log = new FileInfo(FilePath + "-wal");
        bool check = _suspect || log is { Exists: true, Length: > 0 };
        SqliteConnection? connection = TryOpen(check, out string? damage);
        if (connection is null)
        {
            SetAside(damage!);
            connection = TryOpen(check: false, out damage)
                ?? throw new JournalException($"{FilePath} is damaged again right after a new one was started ({damage}): replace the disk or card, or name another folder in series:folder");
        }

        _suspect = false;
        LogOpened(FilePath, JournalSchema.Version);
        return connection;
    }

    private SqliteConnection? TryOpen(bool check, out string? damage)
    {
        var connection = new SqliteConnection(ConnectionString(FilePath));
        try
        {
            connection.Open();
            Execute(connection, "PRAGMA busy_timeout = 5000");
            if (JournalSchema.VersionOf(connection) == 0)
            {
                Execute(connection, "PRAGMA auto_vacuum = INCREMENTAL");
            }

            Execute(connection, "PRAGMA journal_mode = WAL");
            Execute(connection, "PRAGMA journal_size_limit = 8388608");
            damage = check ? DamageOf(connection) : null;
            if (damage is null)
            {
                JournalSchema.Migrate(connection);
                _forcing = null;
                return connection;
            }
        }
        catch (SqliteException e) when (JournalTrouble.IsDamage(e))
        {
            damage = e.Message;
        }
        catch
        {
            connection.Dispose();
            throw;
        }

        connection.Dispose();
        return null;
    }

    private static string? DamageOf(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "PRAGMA quick_check(1)";
        command.CommandTimeout = 0;
        string answer = (string)command.ExecuteScalar()!;
        return answer == "ok" ? null : answer;
    }

    private void SetForcing(SqliteConnection connection, bool force)
    {
        if (_forcing != force)
        {
            Execute(connection, force ? "PRAGMA synchronous = FULL" : "PRAGMA synchronous = NORMAL");
            _forcing = force;
        }
    }

    private void SetAside(string damage)
    {
        string stamp = _time.GetUtcNow().ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        string stem = Path.Combine(Path.GetDirectoryName(FilePath)!, $"{Path.GetFileNameWithoutExtension(FilePath)}.damaged-{stamp}");
        string aside = stem + ".db";
        for (int i = 2; File.Exists(aside); i++)
        {
            aside = $"{stem}-{i}.db";
        }

        foreach (string part in (string[])["-wal", "-shm", ""])
        {
            if (File.Exists(FilePath + part))
            {
                File.Move(FilePath + part, aside + part);
            }
        }

        LogSetAside(FilePath, damage, aside);
    }

    private void CloseUnlessIntact(SqliteException error)
    {
        _suspect |= JournalTrouble.IsDamage(error);
        if (!JournalTrouble.LeavesConnectionIntact(error))
        {
            Close();
        }
    }

    private void Close()
    {
        _connection?.Dispose();
        _connection = null;
    }

    [LoggerMessage(1, LogLevel.Information, "Journal {Path} is open (version {Version})")]
    private partial void LogOpened(string path, int version);

    [LoggerMessage(2, LogLevel.Error, "Journal {Path} is damaged ({Damage}). It was set aside as {Aside} and a new one was started; nothing was deleted. The sqlite3 shell's .recover command may get rows back from it")]
    private partial void LogSetAside(string path, string damage, string aside);
}
