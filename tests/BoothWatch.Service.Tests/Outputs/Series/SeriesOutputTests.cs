using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class SeriesOutputTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Row_HoldsEveryValueItsQualityAndTheFilm()
    {
        _folder.Output().Write(TestAssessment.At(
            TestAssessment.Start.AddMilliseconds(7), verdict: Verdict.SlowDown, temperatureQuality: ReadingQuality.Frozen));

        using SqliteConnection connection = _folder.Look();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT * FROM reading";
        using SqliteDataReader reader = command.ExecuteReader();
        Assert.True(reader.Read());
        Dictionary<string, object> row = Enumerable.Range(0, reader.FieldCount).ToDictionary(reader.GetName, reader.GetValue);

        var expected = new Dictionary<string, object>
        {
            ["id"] = 1L,
            ["time_ms"] = TestAssessment.Start.ToUnixTimeMilliseconds() + 7,
            ["clock_proven"] = 1L,
            ["verdict"] = 1L,
            ["quality"] = "FGGGGGG-",
            ["booth_temperature_c"] = 21.5,
            ["booth_humidity_pct"] = 54.25,
            ["intake_temperature_c"] = 18.125,
            ["intake_humidity_pct"] = 61.5,
            ["station_pressure_pa"] = 101_200.5,
            ["piece_temperature_c"] = 20.75,
            ["exhaust_proof"] = 1.0,
            ["filter_pressure_drop_pa"] = DBNull.Value,
            ["dew_point_c"] = 11.875,
            ["critical_humidity_pct"] = 78.5,
            ["blush_margin_c"] = 6.125,
            ["margin_uncertainty_c"] = 0.75,
            ["lowest_film_temperature_c"] = 14.625,
            ["retarder_recommended_pct"] = 5.0,
        };
        Assert.Equal(expected.OrderBy(c => c.Key), row.OrderBy(c => c.Key));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Row_WithValueThatIsNoNumber_IsWrittenWithoutIt(double value)
    {
        _folder.Output().Write(
            TestAssessment.At(TestAssessment.Start, temperatureC: value),
            TestAssessment.At(TestAssessment.Start.AddSeconds(1), temperatureC: 20));

        Assert.Equal(1L, _folder.Ask<long>("SELECT count(*) FROM reading WHERE booth_temperature_c IS NULL"));
        Assert.Equal(20, _folder.Ask<double>("SELECT booth_temperature_c_mean FROM minute"));
    }

    [Fact]
    public void QualityLetters_AreOneADistinctQuality()
    {
        char[] letters = [.. Enum.GetValues<ReadingQuality>().Select(QualityCodes.Letter)];

        Assert.Equal(letters.Length, letters.Distinct().Count());
        Assert.DoesNotContain('?', letters);
        Assert.Equal(Enum.GetValues<Quantity>().Order(), QualityCodes.Quantities.Select(q => q.Quantity).Order());
    }

    [Fact]
    public void VerdictChange_IsWrittenOnceAChangeWithItsReasons()
    {
        Verdict[] verdicts = [Verdict.Spray, Verdict.Spray, Verdict.SlowDown, Verdict.SlowDown, Verdict.Wait, Verdict.Spray];
        _folder.Output().Write(verdicts.Select((v, s) => TestAssessment.At(TestAssessment.Start.AddSeconds(s), verdict: v)));

        IReadOnlyList<VerdictChange> changes = _folder.Query.VerdictChanges(TestAssessment.Start, TestAssessment.Start.AddHours(1));

        Assert.Equal(
            [(0, null, Verdict.Spray), (2, Verdict.Spray, Verdict.SlowDown), (4, Verdict.SlowDown, Verdict.Wait), (5, Verdict.Wait, Verdict.Spray)],
            changes.Select(c => ((int)(c.Time - TestAssessment.Start).TotalSeconds, c.From, c.To)));
        Assert.Equal(
            new ChangeReason("blush-margin", "slow down", "dew point 17.8 °C, 0.6 °C over what this mix holds", "raise retarder to 9 % or wait"),
            changes[1].Reasons[0]);
    }

    [Fact]
    public void VerdictChange_AfterARestart_BeginsWithoutAVerdictBefore()
    {
        _folder.Output().Write(TestAssessment.At(TestAssessment.Start));
        _folder.Output().Write(TestAssessment.At(TestAssessment.Start.AddSeconds(90)));

        Assert.All(
            _folder.Query.VerdictChanges(TestAssessment.Start, TestAssessment.Start.AddHours(1)),
            change => Assert.Null(change.From));
        Assert.Equal(2L, _folder.Ask<long>("SELECT count(*) FROM verdict_change"));
    }

    [Fact]
    public void RowNumbers_AfterRowsWereDeletedAndARestart_NeverComeAgain()
    {
        _folder.Output().Write(Seconds(3));
        using (SqliteConnection connection = _folder.Look())
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "DELETE FROM reading";
            command.ExecuteNonQuery();
        }

        _folder.Output().Write(Seconds(1));

        Assert.Equal(4L, _folder.Ask<long>("SELECT id FROM reading"));
    }

    [Fact]
    public void Clock_SteppingBack_KeepsTheOrderOfInsertionAndTheMinutesRight()
    {
        int[] seconds = [55, 56, 57, 58, 59, 60, 61, 62, 3, 4, 5, 58, 59, 60, 61, -30, 120];
        _folder.Output().Write(seconds.Select((s, i) =>
            TestAssessment.At(TestAssessment.Start.AddSeconds(s), temperatureC: 20 + i, verdict: (Verdict)(i % 3))));

        using SqliteConnection connection = _folder.Look();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT time_ms FROM reading ORDER BY id";
        using SqliteDataReader reader = command.ExecuteReader();
        foreach (int second in seconds)
        {
            Assert.True(reader.Read());
            Assert.Equal(TestAssessment.Start.AddSeconds(second).ToUnixTimeMilliseconds(), reader.GetInt64(0));
        }

        Assert.Equal(4, MinuteCheck.EqualsRecomputation(connection));
    }

    [Fact]
    public void Restart_InTheMiddleOfAMinute_GoesOnWithThatMinute()
    {
        _folder.Output().Write(Seconds(20));
        _folder.Output().Write(Seconds(20, from: 30));

        using SqliteConnection connection = _folder.Look();
        Assert.Equal(1, MinuteCheck.EqualsRecomputation(connection));
        Assert.Equal(40L, JournalFolder.Ask<long>(connection, "SELECT count FROM minute"));
    }

    internal static IEnumerable<BoothWatch.Verdicts.Assessment> Seconds(int count, int from = 0) =>
        Enumerable.Range(from, count).Select(s => TestAssessment.At(TestAssessment.Start.AddSeconds(s), temperatureC: 20 + (s / 100.0)));
}
