using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>
/// The tables of the journal, as steps that are never edited once released: step n turns version n into n + 1.
/// The version stands in <c>PRAGMA user_version</c>. docs/journal.md explains every column.
/// </summary>
public static class JournalSchema
{
    /// <summary>What a summary of a minute or an hour holds beside its time.</summary>
    internal const string SummaryColumns = """
        count INTEGER NOT NULL,
        worst_verdict INTEGER NOT NULL,
        booth_temperature_c_n INTEGER NOT NULL,
        booth_temperature_c_mean REAL,
        booth_temperature_c_min REAL,
        booth_temperature_c_max REAL,
        booth_humidity_pct_n INTEGER NOT NULL,
        booth_humidity_pct_mean REAL,
        booth_humidity_pct_min REAL,
        booth_humidity_pct_max REAL,
        piece_temperature_c_n INTEGER NOT NULL,
        piece_temperature_c_mean REAL,
        piece_temperature_c_min REAL,
        piece_temperature_c_max REAL,
        dew_point_c_n INTEGER NOT NULL,
        dew_point_c_mean REAL,
        dew_point_c_min REAL,
        dew_point_c_max REAL,
        blush_margin_c_n INTEGER NOT NULL,
        blush_margin_c_mean REAL,
        blush_margin_c_min REAL,
        blush_margin_c_max REAL,
        lowest_film_temperature_c_n INTEGER NOT NULL,
        lowest_film_temperature_c_mean REAL,
        lowest_film_temperature_c_min REAL,
        lowest_film_temperature_c_max REAL
        """;

    private const string ReadingsMinutesAndVerdictChanges = $"""
        CREATE TABLE reading (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            time_ms INTEGER NOT NULL,
            clock_proven INTEGER NOT NULL,
            verdict INTEGER NOT NULL,
            quality TEXT NOT NULL,
            booth_temperature_c REAL,
            booth_humidity_pct REAL,
            intake_temperature_c REAL,
            intake_humidity_pct REAL,
            station_pressure_pa REAL,
            piece_temperature_c REAL,
            exhaust_proof REAL,
            filter_pressure_drop_pa REAL,
            dew_point_c REAL,
            critical_humidity_pct REAL,
            blush_margin_c REAL,
            margin_uncertainty_c REAL,
            lowest_film_temperature_c REAL,
            retarder_recommended_pct REAL
        ) STRICT;
        CREATE INDEX reading_time ON reading (time_ms);

        CREATE TABLE minute (
            minute_ms INTEGER PRIMARY KEY,
            {SummaryColumns}
        ) STRICT;

        CREATE TABLE verdict_change (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            time_ms INTEGER NOT NULL,
            from_verdict INTEGER,
            to_verdict INTEGER NOT NULL,
            reasons TEXT NOT NULL
        ) STRICT;
        CREATE INDEX verdict_change_time ON verdict_change (time_ms);
        """;

    private const string ShippingCursors = """
        CREATE TABLE shipment (
            source TEXT PRIMARY KEY,
            last_id INTEGER NOT NULL,
            shipped INTEGER NOT NULL,
            missed INTEGER NOT NULL
        ) STRICT;

        CREATE TABLE set_aside (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            source TEXT NOT NULL,
            row_id INTEGER NOT NULL,
            set_aside_ms INTEGER NOT NULL,
            reason TEXT NOT NULL,
            point TEXT NOT NULL,
            UNIQUE (source, row_id)
        ) STRICT;
        """;

    // Entries are only ever added. The tables job and coat are lists for searches, made from the entries and nothing else.
    private const string JobsAndCoats = """
        CREATE TABLE job_entry (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            job_id INTEGER NOT NULL,
            at_ms INTEGER NOT NULL,
            entered_by TEXT NOT NULL,
            kind TEXT NOT NULL,
            coat_id INTEGER,
            fields TEXT NOT NULL
        ) STRICT;
        CREATE INDEX job_entry_job ON job_entry (job_id, id);
        CREATE INDEX job_entry_coat ON job_entry (coat_id);
        CREATE TRIGGER job_entry_is_not_edited BEFORE UPDATE ON job_entry
            BEGIN SELECT raise(ABORT, 'entries of jobs are only ever added'); END;
        CREATE TRIGGER job_entry_is_not_removed BEFORE DELETE ON job_entry
            BEGIN SELECT raise(ABORT, 'entries of jobs are only ever added'); END;

        CREATE TABLE job (
            id INTEGER PRIMARY KEY,
            last_entry INTEGER NOT NULL,
            started_ms INTEGER NOT NULL,
            finished_ms INTEGER,
            piece TEXT NOT NULL,
            piece_folded TEXT NOT NULL,
            finish TEXT NOT NULL,
            is_demo INTEGER NOT NULL
        ) STRICT;
        CREATE INDEX job_started ON job (started_ms, id);
        CREATE INDEX job_running ON job (last_entry) WHERE finished_ms IS NULL;

        CREATE TABLE coat (
            id INTEGER PRIMARY KEY,
            job_id INTEGER NOT NULL,
            place INTEGER NOT NULL,
            kind INTEGER NOT NULL,
            start_ms INTEGER NOT NULL,
            stop_ms INTEGER,
            retarder_pct REAL NOT NULL,
            wet_film_um REAL NOT NULL,
            margin_c REAL,
            margin_uncertainty_c REAL,
            outcome INTEGER
        ) STRICT;
        CREATE INDEX coat_job ON coat (job_id, margin_c, outcome);
        CREATE INDEX coat_start ON coat (start_ms, id);
        CREATE INDEX coat_outcome ON coat (outcome, start_ms) WHERE outcome IS NOT NULL;
        """;

    private const string Alerts = """
        CREATE TABLE alert (
            id TEXT PRIMARY KEY,
            key TEXT NOT NULL,
            kind TEXT NOT NULL,
            level INTEGER NOT NULL,
            began_ms INTEGER NOT NULL,
            told_ms INTEGER,
            ended_ms INTEGER,
            end_word TEXT,
            title TEXT NOT NULL,
            finding TEXT NOT NULL,
            action TEXT NOT NULL,
            replaces TEXT,
            acknowledged_ms INTEGER,
            acknowledged_by TEXT
        ) STRICT;
        CREATE UNIQUE INDEX alert_open ON alert (key) WHERE ended_ms IS NULL;
        CREATE INDEX alert_began ON alert (began_ms);

        CREATE TABLE alert_outbox (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            event_id TEXT NOT NULL,
            alert_id TEXT NOT NULL,
            key TEXT NOT NULL DEFAULT '',
            type TEXT NOT NULL,
            channel TEXT NOT NULL,
            target TEXT NOT NULL,
            message TEXT NOT NULL,
            created_ms INTEGER NOT NULL,
            not_before_ms INTEGER NOT NULL,
            expires_ms INTEGER NOT NULL,
            state TEXT NOT NULL,
            unsure INTEGER NOT NULL DEFAULT 0,
            attempts INTEGER NOT NULL DEFAULT 0,
            done_ms INTEGER,
            error TEXT,
            error_ms INTEGER,
            UNIQUE (event_id, channel, target)
        ) STRICT;
        CREATE INDEX alert_outbox_state ON alert_outbox (state, id);
        CREATE INDEX alert_outbox_alert ON alert_outbox (alert_id);
        CREATE INDEX alert_outbox_channel ON alert_outbox (channel, done_ms);

        CREATE TABLE push_subscription (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            endpoint TEXT NOT NULL UNIQUE,
            p256dh TEXT NOT NULL,
            auth TEXT NOT NULL,
            name TEXT NOT NULL,
            created_ms INTEGER NOT NULL
        ) STRICT;
        """;

    // Entries are only ever added.
    private const string SensorChecks = """
        CREATE TABLE sensor_check_entry (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            check_id INTEGER NOT NULL,
            sensor TEXT NOT NULL,
            at_ms INTEGER NOT NULL,
            kind TEXT NOT NULL,
            fields TEXT NOT NULL
        ) STRICT;
        CREATE INDEX sensor_check_entry_sensor ON sensor_check_entry (sensor, id);
        CREATE TRIGGER sensor_check_entry_is_not_edited BEFORE UPDATE ON sensor_check_entry
            BEGIN SELECT raise(ABORT, 'entries of checks are only ever added'); END;
        CREATE TRIGGER sensor_check_entry_is_not_removed BEFORE DELETE ON sensor_check_entry
            BEGIN SELECT raise(ABORT, 'entries of checks are only ever added'); END;

        CREATE TABLE sensor_difference (
            hour_ms INTEGER NOT NULL,
            quantity TEXT NOT NULL,
            first TEXT NOT NULL,
            second TEXT NOT NULL,
            count INTEGER NOT NULL,
            mean REAL NOT NULL,
            PRIMARY KEY (quantity, first, second, hour_ms)
        ) STRICT, WITHOUT ROWID;
        """;

    /// <summary>The steps, for tests of older journals.</summary>
    internal static IReadOnlyList<string> Steps { get; } = [ReadingsMinutesAndVerdictChanges, ShippingCursors, JobsAndCoats, HourSchema.Step, Alerts, SensorChecks];

    /// <summary>The version that first has the tables of alerts.</summary>
    public static int AlertsVersion => Steps.ToList().IndexOf(Alerts) + 1;

    /// <summary>The version that first has the table of sensor checks.</summary>
    public static int ChecksVersion => Steps.ToList().IndexOf(SensorChecks) + 1;

    /// <summary>The version this program writes.</summary>
    public static int Version => Steps.Count;

    /// <summary>Brings an open journal to the present version, one transaction a step.</summary>
    /// <exception cref="JournalException">The journal was written by a newer program.</exception>
    public static void Migrate(SqliteConnection connection) => Migrate(connection, Steps);

    internal static void Migrate(SqliteConnection connection, IReadOnlyList<string> steps)
    {
        long version = VersionOf(connection);
        if (version > steps.Count)
        {
            throw new JournalException(
                $"{connection.DataSource} was written by a newer BoothWatch (journal version {version}, this program knows {steps.Count}): "
                + "update the program, or name another folder in series:folder");
        }

        while (VersionOf(connection) < steps.Count)
        {
            using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);
            int done = (int)VersionOf(connection);
            if (done < steps.Count)
            {
                Execute(connection, steps[done]);
                Execute(connection, $"PRAGMA user_version = {done + 1}");
            }

            transaction.Commit();
        }
    }

    internal static long VersionOf(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "PRAGMA user_version";
        return (long)command.ExecuteScalar()!;
    }

    private static void Execute(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
