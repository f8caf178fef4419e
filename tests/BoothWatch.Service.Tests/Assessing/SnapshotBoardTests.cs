using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.TypedPiece;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Assessing;

public class SnapshotBoardTests
{
    private readonly ShiftedClock _time = new(new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.Zero));
    private readonly ScriptedSensor _air = new("boothAir", Quantity.BoothTemperature, Quantity.BoothHumidity);

    [Fact]
    public void Take_BeforeAnyAnswer_SaysMissing()
    {
        BoothSnapshot snapshot = Board(_air).Take();

        Assert.Equal(ReadingQuality.Missing, snapshot[Quantity.BoothTemperature].Quality);
        Assert.Equal(ReadingQuality.Missing, snapshot[Quantity.PieceTemperature].Quality);
    }

    [Fact]
    public void Take_AfterAnAnswer_CarriesValueAndAge()
    {
        SnapshotBoard board = Board(_air);
        board.Post(_air, Air(21.5, 48));
        _time.Advance(TimeSpan.FromSeconds(2));

        Reading reading = board.Take()[Quantity.BoothTemperature];

        Assert.Equal((21.5, ReadingQuality.Good, TimeSpan.FromSeconds(2)), (reading.Value, reading.Quality, reading.Age));
    }

    [Fact]
    public void Take_WhenTheSensorFallsSilent_TurnsStaleThoughTheWallClockIsSetBack()
    {
        SnapshotBoard board = Board(_air);
        board.Post(_air, Air(21.5, 48));
        _time.Advance(TimeSpan.FromSeconds(6));
        _time.WallClockShift = TimeSpan.FromHours(-1);

        Assert.Equal(ReadingQuality.Stale, board.Take()[Quantity.BoothTemperature].Quality);
    }

    [Fact]
    public void Take_WhenTheSensorFails_GivesItsCause()
    {
        SnapshotBoard board = Board(_air);
        board.Post(_air, SensorAnswer.NoReading("no acknowledge at 0x44 on bus 1"));

        Reading reading = board.Take()[Quantity.BoothHumidity];

        Assert.Equal((ReadingQuality.NoReading, "no acknowledge at 0x44 on bus 1"), (reading.Quality, reading.Cause?.ToString()));
    }

    [Fact]
    public void Take_WhenAnAnswerLacksAValue_DoesNotInventIt()
    {
        SnapshotBoard board = Board(_air);
        board.Post(_air, SensorAnswer.Of(new Sample(Quantity.BoothTemperature, 21.5, 0.1)));

        Assert.True(board.Take()[Quantity.BoothTemperature].IsGood);
        Assert.False(board.Take()[Quantity.BoothHumidity].IsGood);
    }

    [Fact]
    public void Take_TwoSensorsOfOneQuantity_KeepsWhatTheSecondSays()
    {
        ScriptedSensor second = new("boothAirCheck", Quantity.BoothTemperature);
        SnapshotBoard board = new([_air, second], new ClockProof(_time, mustBeSynchronised: false, () => false), _time);
        board.Post(_air, SensorAnswer.Of(new Sample(Quantity.BoothTemperature, 21, 0.1), new Sample(Quantity.BoothHumidity, 45, 1)));
        board.Post(second, SensorAnswer.NoReading("no acknowledge"));

        BoothSnapshot snapshot = board.Take();

        Assert.True(snapshot[Quantity.BoothTemperature].IsGood);
        Reading other = Assert.Single(snapshot.Others);
        Assert.Equal(("boothAirCheck", ReadingQuality.NoReading, "no acknowledge"), (other.Sensor, other.Quality, other.Cause?.ToString()));
    }

    [Fact]
    public void Take_WhenTwoSensorsOfOneQuantityDisagree_SaysSoAfterAMinute()
    {
        ScriptedSensor first = new("boothAir", Quantity.StationPressure);
        ScriptedSensor second = new("intakeAir", Quantity.StationPressure);
        SnapshotBoard board = Board(first, second);

        for (int s = 0; s <= 70; s++)
        {
            board.Post(first, SensorAnswer.Of(new Sample(Quantity.StationPressure, 101_300 + (s % 3), 50)));
            board.Post(second, SensorAnswer.Of(new Sample(Quantity.StationPressure, 98_300 + (s % 3), 50)));
            ReadingQuality quality = board.Take()[Quantity.StationPressure].Quality;
            Assert.Equal(s < 60 ? ReadingQuality.Good : ReadingQuality.Disagreeing, quality);
            _time.Advance(TimeSpan.FromSeconds(1));
        }
    }

    [Theory]
    [InlineData(true, ReadingQuality.Good)]
    [InlineData(false, ReadingQuality.Frozen)]
    public void Take_AValueThatStandsStill_IsFrozenUnlessTypedIn(bool typedIn, ReadingQuality expected)
    {
        ScriptedSensor piece = new("piece", Quantity.PieceTemperature) { Hold = typedIn ? TimeSpan.FromMinutes(30) : null };
        SnapshotBoard board = Board(piece);
        for (int s = 0; s < 700; s++)
        {
            board.Post(piece, SensorAnswer.Of(new Sample(Quantity.PieceTemperature, 20, 0.5)));
            _time.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.Equal(expected, board.Take()[Quantity.PieceTemperature].Quality);
    }

    [Fact]
    public void Take_ATypedValue_CarriesTheTimeSinceItWasTypedThoughItIsAskedForEverySecond()
    {
        TypedPieceTemperature typed = new(_time);
        using TypedPieceSensor piece = new("piece", typed, TimeSpan.FromMinutes(30));
        SnapshotBoard board = Board(piece);
        typed.Enter(18.5);
        for (int second = 0; second < 1799; second++)
        {
            board.Post(piece, piece.Read());
            _time.Advance(TimeSpan.FromSeconds(1));
        }

        Reading reading = board.Take()[Quantity.PieceTemperature];
        Assert.Equal((true, 18.5, 1799), (reading.IsGood, reading.Value, reading.Age.TotalSeconds));

        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.False(board.Take()[Quantity.PieceTemperature].IsGood);
        board.Post(piece, piece.Read());
        Assert.Contains("type it in again", board.Take()[Quantity.PieceTemperature].Cause?.ToString(), StringComparison.Ordinal);

        typed.Enter(18.5);
        board.Post(piece, piece.Read());
        reading = board.Take()[Quantity.PieceTemperature];
        Assert.Equal((true, TimeSpan.Zero), (reading.IsGood, reading.Age));
    }

    private static SensorAnswer Air(double temperatureC, double humidityPct) => SensorAnswer.Of(
        new Sample(Quantity.BoothTemperature, temperatureC, 0.1),
        new Sample(Quantity.BoothHumidity, humidityPct, 1));

    private SnapshotBoard Board(params ISensor[] sensors) =>
        new(sensors, new ClockProof(_time, mustBeSynchronised: false, () => false), _time);

    /// <summary>A clock whose wall time can be set while its monotonic time runs on.</summary>
    private sealed class ShiftedClock(DateTimeOffset start) : FakeTimeProvider(start)
    {
        public TimeSpan WallClockShift { get; set; }

        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + WallClockShift;

        // The base derives its timestamp from GetUtcNow; a real monotonic clock does not follow the wall clock.
        public override long GetTimestamp() => base.GetTimestamp() - (long)(WallClockShift.TotalSeconds * TimestampFrequency);
    }
}
