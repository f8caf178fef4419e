using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Alerts;

/// <summary>Lends the journal to the alerts; here, because outputs may not know each other.</summary>
internal sealed class AlertJournal(Journal journal, JournalLocation location) : IAlertJournal
{
    public void Write(bool durable, Action<SqliteConnection> work) => journal.Write(durable, work);

    public T Read<T>(T empty, Func<SqliteConnection, T> query) => JournalFile.Read(location, empty, query, JournalSchema.AlertsVersion);
}
