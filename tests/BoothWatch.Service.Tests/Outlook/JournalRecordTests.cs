using BoothWatch.Outlook;
using BoothWatch.Service.Outlook;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outlook;

public sealed class JournalRecordTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-outlook-").FullName;

    private JournalLocation Location => new(Path.Combine(_folder, "journal.db"), false);

    [Fact]
    public void NoJournal_HasNoDays() => Assert.Empty(new JournalRecord(Location, TimeZoneInfo.Utc).Before(new DateOnly(2026, 6, 30), 30, default).Dates);

    // Central European time 2026: forward on 29 March at 02:00, back on 25 October at 03:00.
    [Theory]
    [InlineData(2026, 3, 29, 138, 23)]
    [InlineData(2026, 10, 25, 144, 25)]
    [InlineData(2026, 6, 10, 144, 24)]
    public void ADayOnWhichTheClocksChange_KeepsItsTimesOfDay(int year, int month, int day, int slots, int hours)
    {
        TimeZoneInfo zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Zurich");
        DateOnly date = new(year, month, day);
        DateTime midnight = date.ToDateTime(TimeOnly.MinValue);
        DateTimeOffset from = new(midnight, zone.GetUtcOffset(midnight));
        Write(Enumerable.Range(0, hours * 60).Select(minute => (from.AddMinutes(minute), (double?)TimeZoneInfo.ConvertTime(from.AddMinutes(minute), zone).TimeOfDay.TotalHours)));

        AirPast past = new JournalRecord(Location, zone).Before(date.AddDays(1), 5, default);
        Assert.Equal([date], past.Dates);
        Assert.Equal(slots, Enumerable.Range(0, AirDay.Slots).Count(slot => past.Trace(date, slot, 0).Length == 1));

        // The invented dew point is the hour of the day: noon reads twelve on every day.
        Assert.Equal(12, past.Trace(date, 12 * 6, 0)[0].DewPointC, 0.2);
        Assert.Equal(20, past.Trace(date, 20 * 6, 0)[0].DewPointC, 0.2);
    }

    [Fact]
    public void OnlyDaysBeforeToday_AndNotOlderThanAsked_AreRead()
    {
        DateTimeOffset noon = new(2026, 6, 10, 12, 0, 0, TimeSpan.Zero);
        Write(Enumerable.Range(-10, 14).Select(day => (noon.AddDays(day), (double?)10)));
        JournalRecord record = new(Location, TimeZoneInfo.Utc);
        Assert.Equal(Enumerable.Range(5, 5).Select(day => new DateOnly(2026, 6, day)), record.Before(new DateOnly(2026, 6, 10), 5, default).Dates);
        Assert.Equal(Enumerable.Range(7, 5).Select(day => new DateOnly(2026, 6, day)), record.Before(new DateOnly(2026, 6, 12), 5, default).Dates);
    }

    [Fact]
    public void AMinuteWithoutGoodAir_IsNoRecord()
    {
        DateTimeOffset noon = new(2026, 6, 10, 12, 0, 0, TimeSpan.Zero);
        Write([(noon, null)]);
        Assert.Empty(new JournalRecord(Location, TimeZoneInfo.Utc).Before(new DateOnly(2026, 6, 11), 5, default).Dates);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Write(IEnumerable<(DateTimeOffset At, double? DewPointC)> minutes)
    {
        using SqliteConnection connection = new($"Data Source={Location.Path};Pooling=False");
        connection.Open();
        JournalSchema.Migrate(connection);
        using SqliteTransaction transaction = connection.BeginTransaction();
        foreach ((DateTimeOffset at, double? dewPointC) in minutes)
        {
            using SqliteCommand row = connection.CreateCommand();
            row.CommandText = """
                INSERT INTO minute (minute_ms, count, worst_verdict, booth_temperature_c_n, booth_temperature_c_mean, dew_point_c_n, dew_point_c_mean,
                    booth_humidity_pct_n, piece_temperature_c_n, blush_margin_c_n, lowest_film_temperature_c_n) VALUES ($at, 60, 2, $n, 30, $n, $dew, 0, 0, 0, 0)
                """;
            row.Parameters.AddWithValue("$at", at.ToUnixTimeMilliseconds());
            row.Parameters.AddWithValue("$n", dewPointC is null ? 0 : 60);
            row.Parameters.AddWithValue("$dew", (object?)dewPointC ?? DBNull.Value);
            row.ExecuteNonQuery();
        }

        transaction.Commit();
    }
}
