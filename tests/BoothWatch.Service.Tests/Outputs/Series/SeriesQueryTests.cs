using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class SeriesQueryTests : IDisposable
{
    private static readonly DateTimeOffset Start = TestAssessment.Start;

    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void History_BeforeTheFirstWrite_IsEmpty()
    {
        Assert.Empty(_folder.Query.History(Start, Start.AddDays(1)).Points);
        Assert.Empty(_folder.Query.VerdictChanges(Start, Start.AddDays(1)));
    }

    [Fact]
    public void History_OfFewRows_IsTheRowsOfTheSpan()
    {
        _folder.Output().Write(SeriesOutputTests.Seconds(100));

        SeriesHistory history = _folder.Query.History(Start.AddSeconds(10), Start.AddSeconds(20));

        Assert.Null(history.Step);
        Assert.Equal(Enumerable.Range(10, 10).Select(s => Start.AddSeconds(s)), history.Points.Select(p => p.Time));
        Assert.Equal(
            new SeriesPoint(Start.AddSeconds(10), 20.1, 54.25, 11.875, 20.75, 6.125, 14.625, Verdict.Spray)
            {
                LeastRelativeHumidityPct = 54.25,
                MostRelativeHumidityPct = 54.25,
            },
            history.Points[0]);
    }

    [Fact]
    public void History_OfValuesThatWereNotUsable_LeavesThemOut()
    {
        _folder.Output().Write(TestAssessment.At(Start, temperatureQuality: ReadingQuality.Stale, pieceC: null, marginC: null));

        SeriesPoint point = Assert.Single(_folder.Query.History(Start, Start.AddSeconds(1)).Points);

        Assert.Equal((null, 54.25, null, null), (point.TemperatureC, point.RelativeHumidityPct, point.PieceTemperatureC, point.BlushMarginC));
    }

    [Fact]
    public void History_OfMoreRowsThanPoints_GathersThemBySteps()
    {
        _folder.Output().Write(Enumerable.Range(0, 600).Select(s => TestAssessment.At(
            Start.AddSeconds(s), temperatureC: s, marginC: 10 - (s % 5), verdict: s % 5 == 4 ? Verdict.Wait : Verdict.Spray)));

        SeriesHistory history = _folder.Query.History(Start, Start.AddSeconds(600), maxPoints: 140);

        Assert.Equal(TimeSpan.FromSeconds(5), history.Step);
        Assert.Equal(120, history.Points.Count);
        Assert.Equal((Start.AddSeconds(5), 7.0, 6.0, Verdict.Wait),
            (history.Points[1].Time, history.Points[1].TemperatureC!.Value, history.Points[1].BlushMarginC!.Value, history.Points[1].Verdict));
    }

    [Fact]
    public void History_OfALongSpan_ComesFromTheMinutesWeightedByTheirValues()
    {
        // Three hours, a row every 20 s; in the second minute of each pair only one row of three has a usable temperature.
        _folder.Output().Write(Enumerable.Range(0, 540).Select(i => TestAssessment.At(
            Start.AddSeconds(20 * i),
            temperatureC: i % 6,
            temperatureQuality: i % 6 > 3 ? ReadingQuality.Stale : ReadingQuality.Good)));

        SeriesHistory history = _folder.Query.History(Start, Start.AddHours(3), maxPoints: 100);

        Assert.Equal(TimeSpan.FromMinutes(2), history.Step);
        Assert.Equal(90, history.Points.Count);
        Assert.All(history.Points, p => Assert.Equal(1.5, p.TemperatureC!.Value, 12));
    }

    [Fact]
    public void History_OfAYear_ShowsTheOneMinuteThatWasTooDamp()
    {
        SeriesOutput output = _folder.Output();
        output.Write(Enumerable.Range(0, 365).Select(day => TestAssessment.At(Start.AddDays(day), humidityPct: 50)));
        output.Write(
            TestAssessment.At(Start.AddDays(200).AddMinutes(1), humidityPct: 97, marginC: -3, verdict: Verdict.Wait),
            TestAssessment.At(Start.AddDays(365), humidityPct: 50),
            TestAssessment.At(Start.AddDays(366), humidityPct: 50));

        SeriesHistory history = _folder.Query.History(Start, Start.AddDays(365), maxPoints: 100);

        SeriesPoint damp = Assert.Single(history.Points, p => p.Verdict == Verdict.Wait);
        Assert.Equal((50.0, 97.0, -3.0), (damp.LeastRelativeHumidityPct!.Value, damp.MostRelativeHumidityPct!.Value, damp.BlushMarginC!.Value));
        Assert.InRange(Start.AddDays(200) - damp.Time, TimeSpan.Zero, history.Step!.Value);
        Assert.Equal(1L, _folder.Ask<long>("SELECT count(*) FROM hour WHERE booth_humidity_pct_max = 97 AND worst_verdict = 0"));
    }

    [Fact]
    public void History_OfMoreThanFifteenDays_StepsByHoursAtLeast()
    {
        OldJournal.Create(_folder, Start, 17 * 24, everyMinutes: 60);

        Assert.Equal(TimeSpan.FromMinutes(5), _folder.Query.History(Start, Start.AddDays(15), 5000).Step);
        Assert.Equal(TimeSpan.FromHours(1), _folder.Query.History(Start, Start.AddDays(16), 5000).Step);
    }

    [Fact]
    public void History_OfMoreThanEightHoursOfSeconds_ComesFromTheMinutes()
    {
        _folder.Output().Write(TestAssessment.At(Start));
        using (SqliteConnection connection = _folder.Look())
        {
            // Nine hours of rows at one a second, copies of the first, and their minutes.
            JournalFolder.Ask<object?>(connection, $"""
                WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 9 * 3600 - 1)
                INSERT INTO reading (time_ms, clock_proven, verdict, quality, booth_temperature_c)
                SELECT {Start.ToUnixTimeMilliseconds()} + i * 1000, 1, 2, 'GGGGGGGG', 20 FROM n
                """);
            JournalFolder.Ask<object?>(connection, "UPDATE minute SET count = 60");
            OldJournal.Fill(connection, Start.AddMinutes(1), 9 * 60 - 1);
        }

        Assert.Equal(TimeSpan.FromSeconds(10), _folder.Query.History(Start, Start.AddHours(8), 5000).Step);
        Assert.Equal(TimeSpan.FromMinutes(1), _folder.Query.History(Start, Start.AddHours(9), 5000).Step);
    }

    [Fact]
    public void History_WhereRowsWereClearedAway_ComesFromTheMinutes()
    {
        _folder.Output().Write(SeriesOutputTests.Seconds(240));
        _folder.Output().Write(TestAssessment.At(Start.AddDays(30)));
        Assert.Equal(1L, _folder.Ask<long>("SELECT count(*) FROM reading"));

        SeriesHistory history = _folder.Query.History(Start, Start.AddMinutes(10));

        Assert.Equal(TimeSpan.FromMinutes(1), history.Step);
        Assert.Equal(4, history.Points.Count);
        Assert.Equal(20.295, history.Points[0].TemperatureC!.Value, 12);
    }

    [Theory]
    [InlineData(2, 20_000)]
    [InlineData(3, 20_161)]
    [InlineData(10, 10)]
    [InlineData(100, 61)]
    [InlineData(600, 1234)]
    [InlineData(4000, 50_000)]
    [InlineData(1500, 9_999_999)]
    public void History_OfAnySpan_StaysWithinThePoints(int maxPoints, int spanMinutes)
    {
        int everyMs = Math.Max(500, spanMinutes * 60_000 / 700);
        _folder.Output().Write(Enumerable.Range(0, 700).Select(i => TestAssessment.At(Start.AddMilliseconds((long)i * everyMs))));

        SeriesHistory history = _folder.Query.History(Start.AddSeconds(-31), Start.AddMinutes(spanMinutes), maxPoints);

        Assert.InRange(history.Points.Count, 1, maxPoints);

        // Nothing is cut off at the end: the last point reaches the last row.
        DateTimeOffset last = Start.AddMilliseconds(699L * everyMs);
        Assert.InRange(last - history.Points[^1].Time, TimeSpan.Zero, history.Step ?? TimeSpan.Zero);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(12_001)]
    public void History_WithPointsOutOfRange_Throws(int maxPoints) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => _folder.Query.History(Start, Start.AddDays(1), maxPoints));

    [Fact]
    public void VerdictChanges_BeyondTheMost_AreTheNewestInOrder()
    {
        _folder.Output().Write(Enumerable.Range(0, 10).Select(s => TestAssessment.At(Start.AddSeconds(s), verdict: (Verdict)(s % 2))));

        Assert.Equal([8L, 9L, 10L], _folder.Query.VerdictChanges(Start, Start.AddHours(1), most: 3).Select(c => c.Id));
    }

    [Fact]
    public async Task History_ByTwoReadersDuringWrites_SeesWholeTransactionsAndHoldsNobodyUp()
    {
        SeriesOutput output = _folder.Output();
        output.Write(SeriesOutputTests.Seconds(1));
        using var done = new CancellationTokenSource();
        Task<int>[] readers = [.. Enumerable.Range(0, 2).Select(_ => Task.Run(() =>
        {
            int reads = 0;
            long rowsBefore = 0;
            while (!done.IsCancellationRequested || reads == 0)
            {
                int rows = _folder.Query.History(Start, Start.AddDays(1), maxPoints: 5000).Points.Count;
                Assert.True(rows >= rowsBefore);
                using SqliteConnection connection = _folder.Look();
                Assert.Equal(1L, JournalFolder.Ask<long>(connection, "SELECT (SELECT sum(count) FROM minute) = (SELECT count(*) FROM reading)"));
                rowsBefore = rows;
                reads++;
            }

            return reads;
        }))];

        output.Write(SeriesOutputTests.Seconds(1500, from: 1));
        await done.CancelAsync();

        Assert.All(await Task.WhenAll(readers), reads => Assert.InRange(reads, 1, int.MaxValue));
        Assert.Equal(1501, _folder.Query.History(Start, Start.AddDays(1), maxPoints: 5000).Points.Count);
    }

    [Fact]
    public void History_OfADamagedFile_NamesTheFile()
    {
        File.WriteAllText(_folder.Location.Path, new string('x', 10_000));

        JournalException error = Assert.Throws<JournalException>(() => _folder.Query.History(Start, Start.AddDays(1)));

        Assert.Contains(_folder.Location.Path, error.Message, StringComparison.Ordinal);
    }
}
