using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>
/// The messages that are on their way, one row a target. A row is on the disk before the message leaves, and is marked as sending while
/// it does: after a crash it is sent once more with the same id, and counts as maybe arrived.
/// </summary>
/// <remarks>
/// States: waiting, sending, delivered; and set aside as expired, superseded, acknowledged, refused or off.
/// </remarks>
internal sealed class Outbox(IAlertJournal journal)
{
    private const int KeepDays = 30;
    private const int KeepAlertsDays = 366;

    /// <summary>Takes back rows that the last run was sending when it ended.</summary>
    public void Recover() => journal.Write(durable: false, connection =>
        connection.Do("UPDATE alert_outbox SET state = 'waiting', unsure = 1 WHERE state = 'sending'"));

    /// <summary>The rows that wait, oldest first.</summary>
    public IReadOnlyList<OutboxRow> Waiting(int most) => journal.Read<IReadOnlyList<OutboxRow>>([], connection => connection.Ask(
        "SELECT id, channel, target, not_before_ms, message FROM alert_outbox WHERE state = 'waiting' ORDER BY id LIMIT $most",
        row => new OutboxRow(row.GetInt64(0), row.GetString(1), row.GetString(2), row.Time(3), JsonSerializer.Deserialize<AlertMessage>(row.GetString(4), AlertJson.Options)!),
        ("$most", most)));

    /// <summary>Marks a row as being sent, unless it was set aside meanwhile.</summary>
    /// <returns>True when it may be sent.</returns>
    public bool Begin(OutboxRow row)
    {
        bool mine = false;
        journal.Write(durable: false, connection =>
            mine = connection.Do("UPDATE alert_outbox SET state = 'sending', attempts = attempts + 1 WHERE id = $id AND state = 'waiting'", ("$id", row.Id)) > 0);
        return mine;
    }

    /// <summary>Notes that a row was handed over.</summary>
    public void Delivered(OutboxRow row, DateTimeOffset at) => journal.Write(durable: true, connection =>
        connection.Do("UPDATE alert_outbox SET state = 'delivered', done_ms = $at WHERE id = $id", ("$at", at.Ms()), ("$id", row.Id)));

    /// <summary>Notes a failed attempt; the row waits for another one, unless its alert is over meanwhile.</summary>
    public void Failed(OutboxRow row, string error, bool mayHaveArrived, DateTimeOffset at) => journal.Write(durable: false, connection =>
    {
        connection.Do(
            "UPDATE alert_outbox SET state = 'waiting', unsure = max(unsure, $unsure), error = $error, error_ms = $at WHERE id = $id AND state = 'sending'",
            ("$unsure", mayHaveArrived ? 1 : 0), ("$error", error), ("$at", at.Ms()), ("$id", row.Id));
        Settle(connection, row, at);
    });

    /// <summary>Sets a row aside for good.</summary>
    /// <param name="row">The row.</param>
    /// <param name="state">Why, in a word.</param>
    /// <param name="error">Why, in words; null when it is no error.</param>
    /// <param name="at">When, UTC.</param>
    public void SetAside(OutboxRow row, string state, string? error, DateTimeOffset at) => journal.Write(durable: false, connection =>
    {
        connection.Do(
            "UPDATE alert_outbox SET state = $state, done_ms = $at, error = ifnull($error, error), error_ms = iif($error IS NULL, error_ms, $at) WHERE id = $id AND state IN ('waiting', 'sending')",
            ("$state", state), ("$error", error), ("$at", at.Ms()), ("$id", row.Id));
        Settle(connection, row, at);
    });

    /// <summary>Keeps the outcome of a test message, which never waits here.</summary>
    public void Tested(AlertMessage message, string channel, string target, string? error, DateTimeOffset at) => journal.Write(durable: false, connection =>
        connection.Do(
            """
            INSERT INTO alert_outbox (event_id, alert_id, type, channel, target, message, created_ms, not_before_ms, expires_ms, state, attempts, done_ms, error, error_ms)
            VALUES ($event, $alert, 'test', $channel, $target, '{}', $at, $at, $at, $state, 1, $at, $error, $errorAt)
            """,
            ("$event", message.Id), ("$alert", message.Alert), ("$channel", channel), ("$target", target), ("$at", at.Ms()),
            ("$state", error is null ? "delivered" : "refused"), ("$error", error), ("$errorAt", error is null ? null : at.Ms())));

    /// <summary>How a channel has fared.</summary>
    public ChannelRecord RecordOf(string channel) => journal.Read(new ChannelRecord(0, null, null, null), connection => connection.Ask(
        """
        SELECT
            (SELECT count(*) FROM alert_outbox WHERE channel = $channel AND state IN ('waiting', 'sending')),
            (SELECT max(done_ms) FROM alert_outbox WHERE channel = $channel AND state = 'delivered'),
            last.error, last.error_ms
        FROM (SELECT 1) LEFT JOIN (
            SELECT error, error_ms FROM alert_outbox WHERE channel = $channel AND error_ms IS NOT NULL ORDER BY error_ms DESC LIMIT 1) AS last
        """,
        row => new ChannelRecord(row.GetInt64(0), row.TimeOrNull(1), row.TextOrNull(2), row.TimeOrNull(3)),
        ("$channel", channel))[0]);

    /// <summary>Clears away what is long done.</summary>
    public void Sweep(DateTimeOffset now) => journal.Write(durable: false, connection =>
    {
        connection.Do("DELETE FROM alert_outbox WHERE done_ms < $cutoff AND state NOT IN ('waiting', 'sending')", ("$cutoff", now.AddDays(-KeepDays).Ms()));
        connection.Do("DELETE FROM alert WHERE ended_ms < $cutoff", ("$cutoff", now.AddDays(-KeepAlertsDays).Ms()));
    });

    /// <summary>Puts a message into the queue of a target. What waits there of the same key is no news beside it.</summary>
    internal static void Insert(SqliteConnection connection, AlertMessage message, string channel, string target, DateTimeOffset notBefore)
    {
        connection.Do(
            "UPDATE alert_outbox SET state = 'superseded', done_ms = $at WHERE key = $key AND channel = $channel AND target = $target AND state = 'waiting'",
            ("$at", message.Time.Ms()), ("$key", message.Key), ("$channel", channel), ("$target", target));
        connection.Do(
            """
            INSERT INTO alert_outbox (event_id, alert_id, key, type, channel, target, message, created_ms, not_before_ms, expires_ms, state)
            VALUES ($event, $alert, $key, $type, $channel, $target, $message, $at, $from, $expires, 'waiting')
            """,
            ("$event", message.Id), ("$alert", message.Alert), ("$key", message.Key), ("$type", TypeOf(message)), ("$channel", channel), ("$target", target),
            ("$message", JsonSerializer.Serialize(message, AlertJson.Options)), ("$at", message.Time.Ms()), ("$from", notBefore.Ms()), ("$expires", message.Expires.Ms()));
    }

    /// <summary>Sets aside what of an alert has not left.</summary>
    internal static void Supersede(SqliteConnection connection, string alert, DateTimeOffset at) => connection.Do(
        "UPDATE alert_outbox SET state = 'superseded', done_ms = $at WHERE alert_id = $alert AND type = 'alert' AND state = 'waiting'",
        ("$at", at.Ms()), ("$alert", alert));

    /// <summary>Who was told of an alert, or of one that it replaced, or may have been.</summary>
    internal static IReadOnlyList<(string Channel, string Target)> MaybeTold(SqliteConnection connection, string alert) => connection.Ask(
        """
        WITH RECURSIVE chain(id) AS (VALUES ($alert) UNION SELECT alert.replaces FROM alert JOIN chain ON alert.id = chain.id WHERE alert.replaces IS NOT NULL)
        SELECT DISTINCT channel, target FROM alert_outbox
        WHERE alert_id IN chain AND type = 'alert' AND (state IN ('delivered', 'sending') OR unsure = 1)
        """,
        row => (row.GetString(0), row.GetString(1)),
        ("$alert", alert));

    // An attempt that failed while its alert ended: nobody was told, so there is nothing to clear either.
    private static void Settle(SqliteConnection connection, OutboxRow row, DateTimeOffset at)
    {
        bool over = connection.Ask("SELECT 1 FROM alert WHERE id = $id AND ended_ms IS NOT NULL", _ => true, ("$id", row.Message.Alert)).Count > 0;
        if (row.Message.Type != AlertMessageType.Alert || !over)
        {
            return;
        }

        Supersede(connection, row.Message.Alert, at);
        if (!MaybeTold(connection, row.Message.Alert).Contains(row.Lane))
        {
            connection.Do(
                "UPDATE alert_outbox SET state = 'superseded', done_ms = $at WHERE alert_id = $alert AND type = 'clear' AND channel = $channel AND target = $target AND state = 'waiting'",
                ("$at", at.Ms()), ("$alert", row.Message.Alert), ("$channel", row.Channel), ("$target", row.Target));
        }
    }

    private static string TypeOf(AlertMessage message) => message.Type.ToString().ToLowerInvariant();
}
