using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>The database that alerts are kept in. The composition root gives the journal, which outputs may not know.</summary>
public interface IAlertJournal
{
    /// <summary>Runs <paramref name="work"/> in one transaction, forced to the disk when <paramref name="durable"/>.</summary>
    void Write(bool durable, Action<SqliteConnection> work);

    /// <summary>Reads one consistent view; <paramref name="empty"/> when there are no tables yet.</summary>
    T Read<T>(T empty, Func<SqliteConnection, T> query);
}
