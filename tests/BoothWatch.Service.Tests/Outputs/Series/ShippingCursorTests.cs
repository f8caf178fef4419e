using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class ShippingCursorTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    [Fact]
    public void Read_OfANewJournal_IsEmpty()
    {
        ShippingCursor cursor = new(_folder.Location, _folder.Journal(), ShippingCursor.Readings);

        Assert.Empty(cursor.Read(10));
        Assert.Null(cursor.Newest());
        Assert.Equal(ShippingState.None, cursor.State());
    }

    [Fact]
    public void Read_BehindTheMark_GoesOnAfterTheJournalIsReopened()
    {
        Write(10);
        using (Journal journal = _folder.Journal())
        {
            new ShippingCursor(_folder.Location, journal, ShippingCursor.Readings).Advance(1, 4, 4);
        }

        ShippingCursor again = new(_folder.Location, _folder.Journal(), ShippingCursor.Readings);

        Assert.Equal([5, 6, 7], again.Read(3).Select(row => row.Id));
        Assert.Equal(10, again.Newest()!.Id);
        Assert.Equal((6L, TestAssessment.Start.AddSeconds(5)), (again.State().Waiting, again.State().Oldest));
    }

    [Fact]
    public void Read_OfAValueThatWasNotGood_NamesItDoubtful()
    {
        _folder.Output().Write(TestAssessment.At(TestAssessment.Start, temperatureC: 85, temperatureQuality: ReadingQuality.OutOfRange));

        IReadOnlyList<KeyValuePair<string, object>> values =
            new ShippingCursor(_folder.Location, _folder.Journal(), ShippingCursor.Readings).Read(1)[0].Values;

        Assert.Contains(new("booth_temperature_c_doubtful", 85.0), values);
        Assert.DoesNotContain(values, value => value.Key == "booth_temperature_c");
        Assert.Contains(new("booth_humidity_pct", 54.25), values);
        Assert.DoesNotContain(values, value => value.Key is "id" or "time_ms" or "filter_pressure_drop_pa");
    }

    [Fact]
    public void Advance_OverRowsThatWereClearedFirst_CountsThemAsMissed()
    {
        Write(10);
        Journal journal = _folder.Journal();
        ShippingCursor cursor = new(_folder.Location, journal, ShippingCursor.Readings);
        cursor.Advance(1, 2, 2);
        journal.Write(durable: false, connection =>
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "DELETE FROM reading WHERE id <= 5";
            command.ExecuteNonQuery();
        });

        Assert.Equal(5, cursor.State().Waiting);
        IReadOnlyList<JournalRow> rows = cursor.Read(10);
        cursor.Advance(rows[0].Id, rows[^1].Id, rows.Count);

        Assert.Equal(new ShippingState(0, null, 3, 0), cursor.State());
    }

    [Fact]
    public void Sweep_OfOldRowsNotYetShipped_KeepsThemUntilTheyAreShippedOrFarTooOld()
    {
        Write(10);
        Journal journal = _folder.Journal();
        ShippingCursor cursor = new(_folder.Location, journal, ShippingCursor.Readings);
        cursor.Advance(1, 4, 4);
        var retention = new Retention(rawDays: 21, minuteYears: 5, unshippedDays: 90);

        journal.Write(durable: false, connection => retention.Sweep(connection, TestAssessment.Start.AddDays(30)));
        Assert.Equal(6, _folder.Ask<long>("SELECT count(*) FROM reading"));
        Assert.Equal(6, cursor.State().Waiting);

        journal.Write(durable: false, connection => retention.Sweep(connection, TestAssessment.Start.AddDays(91)));
        Assert.Equal(0, _folder.Ask<long>("SELECT count(*) FROM reading"));
    }

    [Fact]
    public void Sweep_OfAJournalThatIsNotShipped_ClearsAsBefore()
    {
        Write(10);
        _folder.Journal().Write(durable: false, connection => new Retention(21, 5).Sweep(connection, TestAssessment.Start.AddDays(30)));

        Assert.Equal(0, _folder.Ask<long>("SELECT count(*) FROM reading"));
    }

    public void Dispose() => _folder.Dispose();

    private void Write(int rows) =>
        _folder.Output().Write(Enumerable.Range(0, rows).Select(s => TestAssessment.At(TestAssessment.Start.AddSeconds(s + 1))));
}
