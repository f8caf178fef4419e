using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Records;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Records;

/// <summary>The record of a job out of a real journal, held against the journal's own rows.</summary>
public sealed class RecordMakerTests : IDisposable
{
    private static readonly DateTimeOffset Start = TestAssessment.Start;
    private readonly RecordShop _shop = new();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Figures_AreThoseOfTheRowsOfTheJournal()
    {
        Fill(0, 40);
        long id = JobWithCoat(start: 10, stop: 16, TestJob.Moment(0.456));
        RecordCoat coat = _shop.Maker.Of(id)!.Record.Coats.Single();

        // Asked of the file by other SQL: the rows of the whole minutes from 10 to the end of minute 16.
        using SqliteConnection connection = _shop.Folder.Look();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT count(*), avg(booth_temperature_c), min(booth_humidity_pct), max(piece_temperature_c), avg(dew_point_c), min(verdict) FROM reading WHERE time_ms >= $from AND time_ms < $to";
        command.Parameters.AddWithValue("$from", Start.AddMinutes(10).ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$to", Start.AddMinutes(17).ToUnixTimeMilliseconds());
        using SqliteDataReader row = command.ExecuteReader();
        Assert.True(row.Read());
        CoatAir air = coat.WhileSprayed!;
        Assert.Equal(row.GetInt64(0), air.Count);
        Assert.Equal(row.GetDouble(1), air.TemperatureC!.Mean, 0.00501);
        Assert.Equal(row.GetDouble(2), air.RelativeHumidityPct!.Min, 0.00501);
        Assert.Equal(row.GetDouble(3), air.PieceTemperatureC!.Max, 0.00501);
        Assert.Equal(row.GetDouble(4), air.DewPointC!.Mean, 0.00501);
        Assert.Equal((Verdict)row.GetInt32(5), air.WorstVerdict);
        Assert.Equal((Start.AddMinutes(10), Start.AddMinutes(17)), (air.From, air.To));

        Assert.Equal(0.46, coat.AtStart!.BlushMarginC);
        Assert.Equal(TestJob.Moment(0).DewPointC, coat.AtStart.DewPointC);
        Assert.Equal(TestJob.Moment(0).Verdict, coat.AtStart.Verdict);
    }

    [Fact]
    public void Air_AroundTheCoats_IsThatOfTheMinutesWithTheirSilence()
    {
        Fill(0, 20);
        Fill(60, 75);
        long id = JobWithCoat(start: 62, stop: 66, TestJob.Moment(1));
        _shop.Folder.Time.SetUtcNow(Start.AddHours(12));
        AirStretch stretch = _shop.Maker.Of(id)!.Record.Air.Single();

        Assert.Equal((Start, Start.AddMinutes(190), 300), (stretch.From, stretch.To, stretch.StepS));
        Assert.Equal([0.0, 5, 10, 15, 60, 65, 70], stretch.Points.Select(point => (point.Time - Start).TotalMinutes));
        double rows = _shop.Folder.Ask<double>($"SELECT avg(booth_temperature_c) FROM reading WHERE time_ms >= {Start.AddMinutes(60).ToUnixTimeMilliseconds()} AND time_ms < {Start.AddMinutes(65).ToUnixTimeMilliseconds()}");
        Assert.Equal(rows, stretch.Points[4].TemperatureC!.Value, 0.00501);
    }

    [Fact]
    public void Record_MadeAgainAfterTheRowsWereCleared_HasTheSameHash()
    {
        Fill(0, 40);
        long id = JobWithCoat(start: 10, stop: 16, TestJob.Moment(0.4));
        _shop.Folder.Time.SetUtcNow(Start.AddDays(1));
        RecordDocument first = _shop.Maker.Of(id)!;
        using (SqliteConnection connection = _shop.Folder.Look())
        using (SqliteCommand clear = connection.CreateCommand())
        {
            clear.CommandText = "DELETE FROM reading";
            clear.ExecuteNonQuery();
        }

        _shop.Folder.Time.Advance(TimeSpan.FromDays(900));
        RecordDocument again = _shop.Maker.Of(id)!;
        Assert.Equal(first.Sha256, again.Sha256);
        Assert.NotEqual(first.Issued.At, again.Issued.At);

        _shop.Store.Append(id, new OutcomeMarked(1, CoatOutcome.Blushed, ""), Start.AddDays(2), EntrySource.Page);
        Assert.NotEqual(first.Sha256, _shop.Maker.Of(id)!.Sha256);
    }

    [Fact]
    public void Coat_BegunOnAnotherVerdict_IsAnOverrideWithTheReasonsOfTheJournal()
    {
        _shop.Folder.Output().Write([TestAssessment.At(Start, verdict: Verdict.Spray), TestAssessment.At(Start.AddMinutes(9), verdict: Verdict.SlowDown)]);
        long id = JobWithCoat(start: 10, stop: 16, TestJob.Moment(0.4) with { Time = Start.AddMinutes(10) });
        CoatOverride found = _shop.Maker.Of(id)!.Record.Coats.Single().Override!;
        Assert.Equal(Verdict.SlowDown, found.Verdict);
        Assert.Equal("begun while the verdict was slow down", found.Finding);
        Assert.Equal(["dew point 17.8 °C, 0.6 °C over what this mix holds"], found.Reasons);
    }

    [Fact]
    public void Record_OfEmulatedSensorsOrAnInventedJob_IsDemo()
    {
        Assert.False(_shop.Maker.Of(JobWithCoat(10, 16, null))!.Record.IsDemo);
        Job invented = _shop.Store.Start(TestJob.Details, Start, EntrySource.Demo);
        Assert.True(_shop.Maker.Of(invented.Id)!.Record.IsDemo);
        using RecordShop emulated = new(isDemo: true);
        Assert.True(emulated.Maker.Of(emulated.Store.Start(TestJob.Details, Start, EntrySource.Page).Id)!.Record.IsDemo);
    }

    [Fact]
    public void Sensor_WithACheck_ShowsIt()
    {
        long id = _shop.Store.Start(TestJob.Details, Start, EntrySource.Page).Id;
        Assert.Null(_shop.Maker.Of(id)!.Record.Sensors.Single().LastCheck);
        Assert.Contains(_shop.Maker.Of(id)!.Record.Uncertainty, words => words.StartsWith("No check of a sensor is on record", StringComparison.Ordinal));
        _shop.LastCheck = new SensorCheck(Start.AddDays(-3), "1.2 % low over sodium chloride");
        Assert.Equal("1.2 % low over sodium chloride", _shop.Maker.Of(id)!.Record.Sensors.Single().LastCheck!.Finding);
    }

    [Fact]
    public void Job_ThatIsNotThere_HasNoRecord() => Assert.Null(_shop.Maker.Of(7));

    private long JobWithCoat(int start, int stop, CoatMoment? moment)
    {
        Job job = _shop.Store.Start(TestJob.Details, Start, EntrySource.Page);
        CoatDetails details = TestJob.Coat(0) with { Start = Start.AddMinutes(start) };
        job = _shop.Store.MarkCoat(job.Id, details, moment, details.Start, EntrySource.Button);
        _shop.Store.Append(job.Id, new CoatStopped(job.LastCoat!.Id, Start.AddMinutes(stop)), Start.AddMinutes(stop), EntrySource.Button);
        return job.Id;
    }

    // A row every 10 s, each with figures of its own.
    private void Fill(int fromMinute, int toMinute) => _shop.Folder.Output().Write(Enumerable.Range(fromMinute * 6, (toMinute - fromMinute) * 6).Select(i => TestAssessment.At(
        Start.AddSeconds(i * 10),
        temperatureC: 20 + (i * 0.0137),
        humidityPct: 50 + (i * 0.0511),
        pieceC: 19 + (i * 0.0093),
        verdict: i % 90 == 89 ? Verdict.SlowDown : Verdict.Spray)));
}
