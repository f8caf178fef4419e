using System.Globalization;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Alerts.WebPush;

/// <summary>The browsers that want messages, in the journal. Safe for several threads.</summary>
internal sealed class PhoneBook(IAlertJournal journal)
{
    /// <summary>Most subscriptions: a shop has a handful, and each costs a request a message.</summary>
    public const int Most = 50;

    private const int PointBytes = 65;
    private const int AuthBytes = 16;
    private const int LongestEndpoint = 2048;

    /// <summary>All of them.</summary>
    public IReadOnlyList<PhoneSubscription> All() => journal.Read<IReadOnlyList<PhoneSubscription>>([], connection => connection.Ask(
        "SELECT id, endpoint, p256dh, auth, name, created_ms FROM push_subscription ORDER BY id", RowOf));

    /// <summary>One of them; null when it is gone.</summary>
    public PhoneSubscription? Find(string id) => journal.Read<PhoneSubscription?>(null, connection => connection.Ask(
        "SELECT id, endpoint, p256dh, auth, name, created_ms FROM push_subscription WHERE id = $id", RowOf, ("$id", id)).SingleOrDefault());

    /// <summary>What somebody called the phone of an endpoint; null when it has not subscribed.</summary>
    public string? NameOf(string? endpoint) => All().FirstOrDefault(phone => phone.Endpoint == endpoint)?.Name;

    /// <summary>Takes a subscription, or renews the one of the same endpoint.</summary>
    /// <returns>Its number; null when there are too many.</returns>
    public string? Add(string endpoint, string p256dh, string auth, string name, DateTimeOffset at)
    {
        string? id = null;
        journal.Write(durable: true, connection =>
        {
            long others = connection.Ask("SELECT count(*) FROM push_subscription WHERE endpoint <> $endpoint", row => row.GetInt64(0), ("$endpoint", endpoint))[0];
            if (others >= Most)
            {
                return;
            }

            connection.Do(
                """
                INSERT INTO push_subscription (endpoint, p256dh, auth, name, created_ms) VALUES ($endpoint, $p256dh, $auth, $name, $at)
                ON CONFLICT (endpoint) DO UPDATE SET p256dh = excluded.p256dh, auth = excluded.auth, name = excluded.name
                """,
                ("$endpoint", endpoint), ("$p256dh", p256dh), ("$auth", auth), ("$name", name), ("$at", at.Ms()));
            id = connection.Ask("SELECT id FROM push_subscription WHERE endpoint = $endpoint", row => row.GetInt64(0), ("$endpoint", endpoint))[0]
                .ToString(CultureInfo.InvariantCulture);
        });
        return id;
    }

    /// <summary>Removes the subscription of an endpoint, and what waits for it.</summary>
    /// <returns>False when there was none.</returns>
    public bool Remove(string endpoint)
    {
        bool found = false;
        journal.Write(durable: true, connection =>
        {
            connection.Do(
                "DELETE FROM alert_outbox WHERE channel = 'webPush' AND state = 'waiting' AND target IN (SELECT id FROM push_subscription WHERE endpoint = $endpoint)",
                ("$endpoint", endpoint));
            found = connection.Do("DELETE FROM push_subscription WHERE endpoint = $endpoint", ("$endpoint", endpoint)) > 0;
        });
        return found;
    }

    /// <summary>What is wrong with a subscription; null when nothing is.</summary>
    public static (string Field, string Problem)? Check(string endpoint, string p256dh, string auth)
    {
        if (endpoint.Length > LongestEndpoint || !Uri.TryCreate(endpoint, UriKind.Absolute, out Uri? url) || url.UserInfo.Length > 0
            || !(url.Scheme == Uri.UriSchemeHttps || (url.Scheme == Uri.UriSchemeHttp && url.IsLoopback)))
        {
            return ("endpoint", "endpoint is no https address; give the endpoint of the browser's subscription");
        }

        if (Base64Url.TryDecode(p256dh) is not { Length: PointBytes } point || point[0] != 4)
        {
            return ("p256dh", "p256dh is no uncompressed point of P-256 in base64url; give keys.p256dh of the browser's subscription");
        }

        return Base64Url.TryDecode(auth) is { Length: AuthBytes } ? null : ("auth", "auth is no 16 bytes in base64url; give keys.auth of the browser's subscription");
    }

    private static PhoneSubscription RowOf(SqliteDataReader row) =>
        new(row.GetInt64(0), row.GetString(1), row.GetString(2), row.GetString(3), row.GetString(4), row.Time(5));
}
