using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>A journal of before there were hours is given them between writes.</summary>
public sealed class HourBackfillTests : IDisposable
{
    private static readonly DateTimeOffset Start = TestAssessment.Start;
    private static readonly DateTimeOffset Now = Start.AddDays(10).AddMinutes(5);

    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void OldJournal_WithEachWrite_GetsTwoDaysOfHoursTheNewestFirst()
    {
        OldJournal.Create(_folder, Start, 10 * 24 * 60);
        SeriesOutput output = _folder.Output();

        (int Made, int Due)[] after = [.. Enumerable.Range(0, 6).Select(second =>
        {
            output.Write(TestAssessment.At(Now.AddSeconds(second)));
            using SqliteConnection connection = _folder.Look();
            return HourCheck.EqualsRecomputation(connection);
        })];

        Assert.Equal([(48, 193), (96, 145), (144, 97), (192, 49), (240, 1), (240, 1)], after);
    }

    [Fact]
    public void OldJournal_WithAGapOfDecades_TakesNoStepForItsHours()
    {
        // A board without a clock of its own wrote its first minutes in 1970.
        OldJournal.Create(_folder, DateTimeOffset.UnixEpoch, 30);
        using (SqliteConnection connection = _folder.Look())
        {
            OldJournal.Fill(connection, Start, 60);
        }

        _folder.Output().Write(TestAssessment.At(Now, clockProven: false));

        using SqliteConnection look = _folder.Look();
        Assert.Equal((2, 1), HourCheck.EqualsRecomputation(look));
    }

    [Fact]
    public void OldJournal_BeforeTheFirstWrite_IsReadFromItsMinutes()
    {
        OldJournal.Create(_folder, Start, 60 * 24 * 60);

        SeriesHistory history = _folder.Query.History(Start, Start.AddDays(60), maxPoints: 100);

        Assert.Equal(TimeSpan.FromHours(24), history.Step);
        Assert.Equal(61, history.Points.Count);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(40)]
    public void History_HoweverFarTheHoursAreMade_IsThatOfTheMinutes(int writes)
    {
        OldJournal.Create(_folder, Start.AddMinutes(-7), 60 * 24 * 60);
        (DateTimeOffset from, DateTimeOffset to, int points)[] spans =
        [
            (Start.AddDays(-1), Start.AddDays(70), 100), (Start.AddMinutes(20).AddSeconds(3), Start.AddDays(55).AddMinutes(41), 2000),
            (Start.AddDays(30).AddSeconds(1), Start.AddDays(33), 40), (Start.AddMinutes(10), Start.AddMinutes(50), 2), (Start.AddMinutes(50), Start.AddMinutes(70), 2),
        ];
        SeriesHistory[] expected = [.. spans.Select(span => _folder.Query.History(span.from, span.to, span.points))];
        SeriesOutput output = _folder.Output();
        output.Write(Enumerable.Range(0, writes).Select(second => TestAssessment.At(Start.AddYears(3).AddSeconds(second), clockProven: false)));
        if (writes == 0)
        {
            using Journal journal = _folder.Journal();
            journal.Write(durable: false, _ => { });
        }

        foreach (((DateTimeOffset from, DateTimeOffset to, int points), SeriesHistory minutes) in spans.Zip(expected))
        {
            SeriesHistory hours = _folder.Query.History(from, to, points);
            Assert.Equal(minutes.Step, hours.Step);
            Assert.NotEmpty(minutes.Points);
            Assert.Equal(minutes.Points.Select(Rounded), hours.Points.Select(Rounded));
        }
    }

    // Sums of the same values in another order differ in their last digits.
    private static SeriesPoint Rounded(SeriesPoint point) => point with
    {
        TemperatureC = Round(point.TemperatureC),
        RelativeHumidityPct = Round(point.RelativeHumidityPct),
        DewPointC = Round(point.DewPointC),
        PieceTemperatureC = Round(point.PieceTemperatureC),
    };

    private static double? Round(double? value) => value is { } known ? Math.Round(known, 9) : null;
}
