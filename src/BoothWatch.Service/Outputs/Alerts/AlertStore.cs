using BoothWatch.Alerts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>
/// The alerts in the journal. What happens to an episode, and the messages that it makes, are one transaction that is on the disk when
/// a method returns. Safe for several threads.
/// </summary>
internal sealed class AlertStore(IAlertJournal journal, AlertSources sources)
{
    private const string Columns =
        "id, kind, level, title, finding, action, began_ms, told_ms, ended_ms, end_word, acknowledged_ms, acknowledged_by";

    /// <summary>The episodes that are open, as the last run left them.</summary>
    public IReadOnlyList<Episode> Open() => journal.Read<IReadOnlyList<Episode>>([], connection => connection.Ask(
        "SELECT key, kind, level, began_ms, title, finding, action, told_ms FROM alert WHERE ended_ms IS NULL",
        row => new Episode(
            row.GetString(0), AlertWords.Kinds[row.GetString(1)], (AlertLevel)row.GetInt64(2), row.Time(3), row.GetString(4), row.GetString(5), row.GetString(6))
        {
            IsTold = !row.IsDBNull(7),
        }));

    /// <summary>Keeps what happened, and writes the messages into the outbox.</summary>
    /// <param name="changes">What happened.</param>
    /// <param name="at">When, UTC.</param>
    /// <param name="targets">Whom messages go to: channel and target.</param>
    public void Enter(IEnumerable<EpisodeChange> changes, DateTimeOffset at, IReadOnlyList<(string Channel, string Target)> targets) =>
        journal.Write(durable: true, connection =>
        {
            foreach (EpisodeChange change in changes)
            {
                Enter(connection, change, at, targets);
            }
        });

    /// <summary>The newest alerts, newest first.</summary>
    public IReadOnlyList<AlertRow> Newest(int most) => journal.Read<IReadOnlyList<AlertRow>>([], connection => connection.Ask(
        $"SELECT {Columns} FROM alert ORDER BY began_ms DESC, rowid DESC LIMIT $most", RowOf, ("$most", most)));

    /// <summary>Acknowledges an alert; what of it has not been sent yet stays here.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="by">Where it was acknowledged.</param>
    /// <param name="at">When, UTC.</param>
    /// <returns>The alert; null when there is none of the id. One that was acknowledged before stays as it was.</returns>
    public AlertRow? Acknowledge(string id, string by, DateTimeOffset at)
    {
        AlertRow? alert = null;
        journal.Write(durable: true, connection =>
        {
            int marked = connection.Do(
                "UPDATE alert SET acknowledged_ms = $at, acknowledged_by = $by WHERE id = $id AND acknowledged_ms IS NULL", ("$at", at.Ms()), ("$by", by), ("$id", id));
            if (marked > 0)
            {
                connection.Do(
                    "UPDATE alert_outbox SET state = 'acknowledged', done_ms = $at WHERE alert_id = $id AND type = 'alert' AND state = 'waiting'", ("$at", at.Ms()), ("$id", id));
            }

            alert = connection.Ask($"SELECT {Columns} FROM alert WHERE id = $id", RowOf, ("$id", id)).SingleOrDefault();
        });
        return alert;
    }

    private static AlertRow RowOf(SqliteDataReader row) => new(
        row.GetString(0),
        row.GetString(1),
        ((AlertLevel)row.GetInt64(2)).ToString().ToLowerInvariant(),
        row.GetString(3),
        row.GetString(4),
        row.GetString(5),
        row.Time(6),
        row.TimeOrNull(7),
        row.TimeOrNull(8),
        row.TextOrNull(9),
        row.TimeOrNull(10),
        row.TextOrNull(11));

    private void Enter(SqliteConnection connection, EpisodeChange change, DateTimeOffset at, IReadOnlyList<(string Channel, string Target)> targets)
    {
        Episode episode = change.Episode;
        if (change.Step == EpisodeStep.Began)
        {
            connection.Do(
                """
                INSERT INTO alert (id, key, kind, level, began_ms, title, finding, action, replaces)
                VALUES ($id, $key, $kind, $level, $began, $title, $finding, $action,
                    (SELECT id FROM alert WHERE key = $key AND end_word = 'replaced' AND ended_ms = $began ORDER BY rowid DESC LIMIT 1))
                """,
                ("$id", AlertIds.New(at)), ("$key", episode.Key), ("$kind", episode.Kind.Word()), ("$level", (int)episode.Level), ("$began", at.Ms()),
                ("$title", change.Title), ("$finding", change.Finding), ("$action", change.Action));
            return;
        }

        if (connection.Ask("SELECT id FROM alert WHERE key = $key AND ended_ms IS NULL", row => row.GetString(0), ("$key", episode.Key)) is not [var id])
        {
            return;
        }

        if (change.Step == EpisodeStep.Told)
        {
            connection.Do(
                "UPDATE alert SET told_ms = $at, title = $title, finding = $finding, action = $action WHERE id = $id",
                ("$at", at.Ms()), ("$title", change.Title), ("$finding", change.Finding), ("$action", change.Action), ("$id", id));
            AlertMessage message = Message(change, id, AlertMessageType.Alert, at, at + AlertLifetime.Of(episode.Kind));
            foreach ((string channel, string target) in targets)
            {
                Outbox.Insert(connection, message, channel, target, at);
            }

            return;
        }

        // What was said of it and has not left is no news any more, whichever way it ended.
        string word = change.Step.ToString().ToLowerInvariant();
        connection.Do("UPDATE alert SET ended_ms = $at, end_word = $word WHERE id = $id", ("$at", at.Ms()), ("$word", word), ("$id", id));
        Outbox.Supersede(connection, id, at);
        if (change.Step == EpisodeStep.Cleared && episode.IsTold)
        {
            DateTimeOffset from = change.NotBefore ?? at;
            AlertMessage clear = Message(change, id, AlertMessageType.Clear, at, from + AlertLifetime.OfClear(episode.Kind));
            foreach ((string channel, string target) in Outbox.MaybeTold(connection, id))
            {
                Outbox.Insert(connection, clear, channel, target, from);
            }
        }
    }

    private AlertMessage Message(EpisodeChange change, string alert, AlertMessageType type, DateTimeOffset at, DateTimeOffset expires) => new()
    {
        Id = AlertIds.New(at),
        Alert = alert,
        Type = type,
        Kind = change.Episode.Kind,
        Key = change.Episode.Key,
        Level = type == AlertMessageType.Clear ? AlertLevel.Notice : change.Episode.Level,
        Shop = sources.Shop,
        Booth = sources.Booth,
        Title = change.Title,
        Finding = change.Finding,
        Action = change.Action,
        Began = change.Episode.Began,
        Time = at,
        Expires = expires,
    };
}
