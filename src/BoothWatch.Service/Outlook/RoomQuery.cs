using BoothWatch.Air;
using BoothWatch.Outlook;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outlook;

/// <summary>Reads booth, intake and fan from the rows of the journal, gathered minute by minute. Values that were not good are not there.</summary>
/// <param name="location">Where the journal lies.</param>
/// <param name="pressurePa">Station pressure where none was measured, Pa.</param>
internal sealed class RoomQuery(JournalLocation location, double pressurePa)
{
    private static readonly string Minutes = $"""
        SELECT (time_ms - $from) / $length AS part, {Mean("booth_temperature_c")}, {Mean("booth_humidity_pct")}, {Mean("intake_temperature_c")},
            {Mean("intake_humidity_pct")}, {Mean("exhaust_proof")}, {Mean("station_pressure_pa")}
        FROM reading WHERE time_ms >= $from AND time_ms < $to GROUP BY part ORDER BY part
        """;

    /// <summary>The minutes of a span.</summary>
    /// <param name="from">Begin, UTC.</param>
    /// <param name="to">End, UTC.</param>
    /// <param name="speed">Seconds of the booth in a second of the journal: above 1 in a compressed day.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public IReadOnlyList<RoomMinute> Read(DateTimeOffset from, DateTimeOffset to, double speed) => JournalFile.Read<IReadOnlyList<RoomMinute>>(location, [], connection =>
    {
        long lengthMs = Math.Max(1, (long)(ReadingStatements.MinuteMs / speed));
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = Minutes;
        command.Parameters.AddWithValue("$from", from.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$to", to.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$length", lengthMs);
        using SqliteDataReader reader = command.ExecuteReader();
        List<RoomMinute> minutes = [];
        while (reader.Read())
        {
            double? Value(int column) => reader.IsDBNull(column) ? null : reader.GetDouble(column);
            double pressure = Value(6) ?? pressurePa;
            minutes.Add(new RoomMinute(
                reader.GetInt64(0) * lengthMs * speed / 3_600_000, Ratio(Value(1), Value(2), pressure), Ratio(Value(3), Value(4), pressure), Value(5) is { } proof ? proof >= 0.5 : null));
        }

        return minutes;
    });

    /// <summary>Humidity ratio, kg/kg; null where it cannot be told.</summary>
    public static double? Ratio(double? temperatureC, double? humidityPct, double pressurePa) =>
        temperatureC is >= -40 and <= 60 && humidityPct is >= 0 and <= 100
            ? MoistAir.FromRelativeHumidity(temperatureC.Value, humidityPct.Value, pressurePa).HumidityRatio
            : null;

    private static string Mean(string column) => $"avg({QualityCodes.GoodValueSql(column)})";
}
