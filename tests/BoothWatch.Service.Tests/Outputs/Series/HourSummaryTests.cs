using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class HourSummaryTests : IDisposable
{
    private static readonly DateTimeOffset Start = TestAssessment.Start;

    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Hour_WhenTheNextBegins_IsMadeOfItsMinutesWeightedByTheirValues()
    {
        // Minute 3 has three rows of 20 °C and minute 40 one of 24 °C; a row without temperature counts as a row only.
        SeriesOutput output = _folder.Output();
        output.Write(
            TestAssessment.At(Start.AddMinutes(3), 20, humidityPct: 50),
            TestAssessment.At(Start.AddMinutes(3).AddSeconds(1), 20, humidityPct: 51),
            TestAssessment.At(Start.AddMinutes(3).AddSeconds(2), 20, humidityPct: 52, verdict: Verdict.SlowDown),
            TestAssessment.At(Start.AddMinutes(40), 24, humidityPct: 93, marginC: -1.5, verdict: Verdict.Wait),
            TestAssessment.At(Start.AddMinutes(41), 60, humidityPct: 54, temperatureQuality: ReadingQuality.Frozen));
        Assert.Equal(0L, _folder.Ask<long>("SELECT count(*) FROM hour"));
        output.Write(TestAssessment.At(Start.AddMinutes(60)));

        using SqliteConnection connection = _folder.Look();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            SELECT hour_ms, count, worst_verdict, booth_temperature_c_n, booth_temperature_c_mean, booth_temperature_c_min, booth_temperature_c_max,
                booth_humidity_pct_mean, booth_humidity_pct_min, booth_humidity_pct_max, blush_margin_c_min FROM hour
            """;
        using SqliteDataReader hour = command.ExecuteReader();
        Assert.True(hour.Read());
        Assert.Equal((Start.ToUnixTimeMilliseconds(), 5L, 0L, 4L), (hour.GetInt64(0), hour.GetInt64(1), hour.GetInt64(2), hour.GetInt64(3)));
        Assert.Equal((21.0, 20.0, 24.0), (hour.GetDouble(4), hour.GetDouble(5), hour.GetDouble(6)));
        Assert.Equal((60.0, 50.0, 93.0, -1.5), (hour.GetDouble(7), hour.GetDouble(8), hour.GetDouble(9), hour.GetDouble(10)));
        Assert.False(hour.Read());
    }

    [Fact]
    public void Hour_AfterALateRow_IsMadeAnew()
    {
        SeriesOutput output = _folder.Output();
        output.Write(TestAssessment.At(Start), TestAssessment.At(Start.AddHours(1)), TestAssessment.At(Start.AddHours(2)));
        Assert.Equal(2L, _folder.Ask<long>("SELECT count(*) FROM hour"));

        // The clock steps back by two hours, and forward again.
        output.Write(TestAssessment.At(Start.AddSeconds(1), humidityPct: 99, verdict: Verdict.Wait));
        Check(made: 2, due: 1);
        output.Write(TestAssessment.At(Start.AddHours(2).AddSeconds(1)));

        Check(made: 2, due: 1);
        Assert.Equal(99.0, _folder.Ask<double>($"SELECT booth_humidity_pct_max FROM hour WHERE hour_ms = {Start.ToUnixTimeMilliseconds()}"));
    }

    [Fact]
    public void Hour_AfterAStartWithinIt_IsMadeWhole()
    {
        _folder.Output().Write(TestAssessment.At(Start), TestAssessment.At(Start.AddMinutes(20)));
        _folder.Output().Write(TestAssessment.At(Start.AddMinutes(50)), TestAssessment.At(Start.AddHours(5)));

        Check(made: 1, due: 1);
        Assert.Equal(3L, _folder.Ask<long>("SELECT count FROM hour"));
    }

    [Theory]
    [InlineData("UPDATE hour SET booth_humidity_pct_max = 60")]
    [InlineData("UPDATE hour SET dew_point_c_mean = dew_point_c_mean + 0.001")]
    [InlineData("UPDATE hour SET worst_verdict = 2")]
    [InlineData("DELETE FROM hour")]
    [InlineData("DELETE FROM hour_due")]
    [InlineData("INSERT INTO hour_due SELECT hour_ms, hour_ms + 3600000 FROM hour")]
    public void Check_OfAnHourThatIsNotItsMinutes_Fires(string tamper)
    {
        SeriesOutput output = _folder.Output();
        output.Write(TestAssessment.At(Start, humidityPct: 61, verdict: Verdict.SlowDown), TestAssessment.At(Start.AddHours(1)));
        Check(made: 1, due: 1);
        using SqliteConnection connection = _folder.Look();
        JournalFolder.Ask<object?>(connection, tamper);

        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => HourCheck.EqualsRecomputation(connection));
    }

    /// <summary>Whatever is written, in whatever order and with whatever gaps, each hour that is made equals its minutes.</summary>
    [Property(MaxTest = 20)]
    public Property Hour_OfAnyRows_EqualsItsMinutes()
    {
        Gen<double?> perhaps = Gen.Frequency((4, Gen.Choose(-40_000, 60_000).Select(v => (double?)(v / 1000.0))), (1, Gen.Constant<double?>(null)));
        Gen<Assessment> row =
            from second in Gen.Choose(-20_000, 20_000)
            from temperature in Gen.Choose(-40_000, 60_000)
            from piece in perhaps
            from margin in perhaps
            from verdict in Gen.Elements(Enum.GetValues<Verdict>())
            from quality in Gen.Elements(Enum.GetValues<ReadingQuality>())
            select TestAssessment.At(
                Start.AddSeconds(second), temperature / 1000.0, pieceC: piece, marginC: margin, verdict: verdict, temperatureQuality: quality);
        return Prop.ForAll(row.NonEmptyListOf().Select(rows => rows.ToArray()).ToArbitrary(), rows =>
        {
            using var folder = new JournalFolder();
            folder.Output().Write(rows);
            using SqliteConnection connection = folder.Look();
            (int _, int due) = HourCheck.EqualsRecomputation(connection);
            Assert.Equal(1, due);
        });
    }

    /// <summary>
    /// Summer time ends at 01:00 UTC on the last Sunday of October, and begins so in March (Directive 2000/84/EC, articles 2 and 3):
    /// the local hour that comes twice, and the one that is left out, make no hour of the journal longer or shorter.
    /// </summary>
    [Theory]
    [InlineData(2026, 10, 25, 2, 1)]
    [InlineData(2026, 3, 29, 1, 2)]
    public void Hour_WhenTheLocalClockChanges_StillHasSixtyMinutes(int year, int month, int day, int offsetBeforeH, int offsetAfterH)
    {
        var midnight = new DateTimeOffset(year, month, day, 0, 0, 0, TimeSpan.Zero);
        _folder.Output().Write(Enumerable.Range(0, 181).Select(minute =>
            TestAssessment.At(midnight.AddMinutes(minute).ToOffset(TimeSpan.FromHours(minute < 60 ? offsetBeforeH : offsetAfterH)))));

        Check(made: 3, due: 1);
        Assert.Equal(3L, _folder.Ask<long>("SELECT count(*) FROM hour WHERE count = 60"));
        Assert.Equal(midnight.ToUnixTimeMilliseconds(), _folder.Ask<long>("SELECT min(hour_ms) FROM hour"));
    }

    [Fact]
    public void Retention_OfMinutes_TakesTheirHoursWithThem()
    {
        // A day and a half of minutes of five years ago, and a row of now: the day before the cutoff goes, in batches that split hours.
        DateTimeOffset now = Start.AddYears(5).AddDays(1).AddMinutes(30);
        _folder.Output().Write(TestAssessment.At(Start.AddMinutes(-1)));
        using (SqliteConnection connection = _folder.Look())
        {
            OldJournal.Fill(connection, Start, 36 * 60);
        }

        var output = new SeriesOutput(_folder.Journal(), _folder.Time, new Retention(21, 5, batch: 250));
        output.Write(TestAssessment.At(now));
        Check(made: 32, due: 1);
        output.Write(Enumerable.Range(1, 8).Select(second => TestAssessment.At(now.AddSeconds(second))));

        Check(made: 12, due: 1);
        Assert.Equal(Start.AddDays(1).AddMinutes(30).ToUnixTimeMilliseconds(), _folder.Ask<long>("SELECT min(minute_ms) FROM minute"));
        Assert.Equal(Start.AddDays(1).ToUnixTimeMilliseconds(), _folder.Ask<long>("SELECT min(hour_ms) FROM hour"));
    }

    private void Check(int made, int due)
    {
        using SqliteConnection connection = _folder.Look();
        Assert.Equal((made, due), HourCheck.EqualsRecomputation(connection));
    }
}
