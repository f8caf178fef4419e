using System.Text.Json;
using System.Text.Json.Serialization;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Checks;

/// <summary>The checks in the journal: rows that are only ever added. A method that returns has its row on the disk.</summary>
/// <param name="journal">The journal; null where nothing is written.</param>
/// <param name="location">Where it lies.</param>
internal sealed class CheckStore(Journal? journal, JournalLocation location)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        NumberHandling = JsonNumberHandling.Strict,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    /// <summary>Adds an entry.</summary>
    /// <param name="checkId">The check; null begins a new one.</param>
    /// <param name="sensor">The sensor.</param>
    /// <param name="at">When, UTC.</param>
    /// <param name="step">What happened.</param>
    /// <param name="fields">What belongs to it.</param>
    /// <exception cref="JournalException">It could not be written; the message names the file and the fix.</exception>
    public CheckEntry Add(long? checkId, string sensor, DateTimeOffset at, CheckStep step, CheckFields fields)
    {
        CheckEntry? added = null;
        (journal ?? throw new InvalidOperationException("Nothing is written here: this store was made without a journal.")).Write(durable: true, connection =>
        {
            long check = checkId ?? Next(connection);
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = """
                INSERT INTO sensor_check_entry (check_id, sensor, at_ms, kind, fields) VALUES ($check, $sensor, $at, $kind, $fields) RETURNING id
                """;
            command.Parameters.AddWithValue("$check", check);
            command.Parameters.AddWithValue("$sensor", sensor);
            command.Parameters.AddWithValue("$at", at.ToUnixTimeMilliseconds());
            command.Parameters.AddWithValue("$kind", JsonNamingPolicy.KebabCaseLower.ConvertName(step.ToString()));
            command.Parameters.AddWithValue("$fields", JsonSerializer.Serialize(fields, Json));
            added = new CheckEntry((long)command.ExecuteScalar()!, check, sensor, at, step, fields);
        });
        return added!;
    }

    /// <summary>Everything ever entered, oldest first.</summary>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public IReadOnlyList<CheckEntry> All() =>
        JournalFile.Read<IReadOnlyList<CheckEntry>>(location, [], Read, JournalSchema.ChecksVersion);

    private static List<CheckEntry> Read(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT id, check_id, sensor, at_ms, kind, fields FROM sensor_check_entry ORDER BY id";
        using SqliteDataReader reader = command.ExecuteReader();
        List<CheckEntry> entries = [];
        while (reader.Read())
        {
            entries.Add(EntryOf(reader));
        }

        return entries;
    }

    private static CheckEntry EntryOf(SqliteDataReader row)
    {
        long id = row.GetInt64(0);
        try
        {
            return new CheckEntry(
                id,
                row.GetInt64(1),
                row.GetString(2),
                DateTimeOffset.FromUnixTimeMilliseconds(row.GetInt64(3)),
                Enum.Parse<CheckStep>(row.GetString(4).Replace("-", "", StringComparison.Ordinal), ignoreCase: true),
                JsonSerializer.Deserialize<CheckFields>(row.GetString(5), Json) ?? new CheckFields());
        }
        catch (Exception unreadable) when (unreadable is JsonException or ArgumentException)
        {
            throw new JournalException($"row {id} of sensor_check_entry in the journal does not say what this program can read: {unreadable.Message}", unreadable);
        }
    }

    private static long Next(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT ifnull(max(check_id), 0) + 1 FROM sensor_check_entry";
        return (long)command.ExecuteScalar()!;
    }
}
