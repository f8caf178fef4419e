using BoothWatch.Air;
using BoothWatch.Readings;

namespace BoothWatch.Tests.Readings;

public class QualityGateTests
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);

    [Fact]
    public void Read_NoAnswerYet_IsMissing()
    {
        Reading reading = new QualityGate(Quantity.BoothTemperature, "boothAir").Read(Second);
        Assert.Equal(ReadingQuality.Missing, reading.Quality);
        Assert.Null(reading.Value);
        Assert.Equal("it has not answered yet", reading.Cause?.ToString());
        Assert.Equal("boothAir", reading.Sensor);
    }

    [Fact]
    public void Read_PlausibleValue_IsGoodWithItsAgeAndUncertainty()
    {
        QualityGate gate = new(Quantity.BoothTemperature, "boothAir");
        gate.Accept(21.4, 0.1, Second);
        Reading reading = gate.Read(3 * Second);
        Assert.Equal(new Reading(Quantity.BoothTemperature, "boothAir", 21.4, 0.1, 2 * Second, ReadingQuality.Good, null), reading);
        Assert.True(reading.IsGood);
    }

    [Fact]
    public void Read_FailedBeforeAnyValue_IsNoReadingWithTheCause()
    {
        QualityGate gate = new(Quantity.PieceTemperature, "piece");
        gate.Fail("no acknowledge at 0x5A", Second);
        Reading reading = gate.Read(Second);
        Assert.Equal(ReadingQuality.NoReading, reading.Quality);
        Assert.Equal("no acknowledge at 0x5A", reading.Cause?.ToString());
        Assert.Null(reading.Value);
    }

    [Fact]
    public void Read_OneLostRead_IsBridgedAndSaysSo()
    {
        QualityGate gate = new(Quantity.BoothTemperature, "boothAir");
        gate.Accept(21.4, 0.1, TimeSpan.Zero);
        gate.Fail("bad CRC", Second);
        Reading reading = gate.Read(Second);
        Assert.Equal(ReadingQuality.Good, reading.Quality);
        Assert.Equal(Second, reading.Age);
        Assert.Equal("bad CRC", reading.Cause?.ToString());
        gate.Accept(21.5, 0.1, 2 * Second);
        Assert.Null(gate.Read(2 * Second).Cause);
    }

    [Theory]
    [InlineData(4.999, ReadingQuality.Good)]
    [InlineData(5, ReadingQuality.NoReading)]
    [InlineData(600, ReadingQuality.NoReading)]
    public void Read_OnlyFailuresSince_IsNoReadingOnceStale(double seconds, ReadingQuality expected)
    {
        QualityGate gate = new(Quantity.BoothTemperature, "boothAir");
        gate.Accept(21.4, 0.1, TimeSpan.Zero);
        gate.Fail("bad CRC", Second);
        Reading reading = gate.Read(TimeSpan.FromSeconds(seconds));
        Assert.Equal(expected, reading.Quality);
        Assert.Equal("bad CRC", reading.Cause?.ToString());
        Assert.Equal(21.4, reading.Value);
    }

    [Theory]
    [InlineData(4.999, ReadingQuality.Good)]
    [InlineData(5, ReadingQuality.Stale)]
    public void Read_Silence_IsStaleFromTheLimit(double seconds, ReadingQuality expected)
    {
        QualityGate gate = new(Quantity.StationPressure, "barometer");
        gate.Accept(101_000, 50, TimeSpan.Zero);
        Assert.Equal(expected, gate.Read(TimeSpan.FromSeconds(seconds)).Quality);
    }

    [Fact]
    public void Accept_OldAnswerHandedOverAgain_StaysOld()
    {
        QualityGate gate = new(Quantity.BoothTemperature, "boothAir");
        gate.Accept(21.4, 0.1, Second);
        gate.Fail("bad CRC", 2 * Second);
        gate.Accept(21.4, 0.1, Second);
        Reading reading = gate.Read(5 * Second);
        Assert.Equal(4 * Second, reading.Age);
        Assert.Equal("bad CRC", reading.Cause?.ToString());
        gate.Accept(30, 0.1, Second / 2);
        Assert.Equal(21.4, gate.Read(5 * Second).Value);
    }

    [Theory]
    [InlineData(Quantity.BoothTemperature, -20.1)]
    [InlineData(Quantity.BoothTemperature, 60.1)]
    [InlineData(Quantity.BoothTemperature, double.NaN)]
    [InlineData(Quantity.BoothTemperature, double.PositiveInfinity)]
    [InlineData(Quantity.IntakeTemperature, -60.1)]
    [InlineData(Quantity.BoothHumidity, -6)]
    [InlineData(Quantity.IntakeHumidity, 119)]
    [InlineData(Quantity.StationPressure, 1013.25)]
    [InlineData(Quantity.PieceTemperature, 380)]
    [InlineData(Quantity.ExhaustProof, 2)]
    [InlineData(Quantity.FilterPressureDrop, 5000)]
    public void Read_ImplausibleValue_IsOutOfRangeAtOnceAndNotBridged(Quantity quantity, double value)
    {
        QualityGate gate = new(quantity, "sensor");
        PlausibleRange range = PlausibleRange.Of(quantity);
        gate.Accept((range.Lowest + range.Highest) / 2, 0.1, TimeSpan.Zero);
        Assert.True(gate.Read(TimeSpan.Zero).IsGood);
        gate.Accept(value, 0.1, Second);
        Reading reading = gate.Read(Second);
        Assert.Equal(ReadingQuality.OutOfRange, reading.Quality);
        Assert.StartsWith("reads ", reading.Cause?.ToString(), StringComparison.Ordinal);
        Assert.True(reading.Value is null || double.IsFinite(reading.Value.Value));
    }

    [Theory]
    [InlineData(Quantity.BoothHumidity, 0.0, ReadingQuality.Saturated)]
    [InlineData(Quantity.BoothHumidity, 0.5, ReadingQuality.Saturated)]
    [InlineData(Quantity.BoothHumidity, 0.6, ReadingQuality.Good)]
    [InlineData(Quantity.BoothHumidity, 99.4, ReadingQuality.Good)]
    [InlineData(Quantity.BoothHumidity, 99.5, ReadingQuality.Saturated)]
    [InlineData(Quantity.BoothHumidity, 103.0, ReadingQuality.Saturated)]
    [InlineData(Quantity.IntakeHumidity, 99.5, ReadingQuality.Saturated)]
    [InlineData(Quantity.BoothTemperature, 0.0, ReadingQuality.Good)]
    public void Read_EndOfScale_IsSaturatedForHumidityOnly(Quantity quantity, double value, ReadingQuality expected)
    {
        QualityGate gate = new(quantity, "air");
        gate.Accept(value, 1, Second);
        Assert.Equal(expected, gate.Read(Second).Quality);
    }

    [Theory]
    [InlineData(Quantity.BoothHumidity, 1, "has read 55.25 % without the least change for 1 min")]
    [InlineData(Quantity.BoothTemperature, 1, "has read 55.25 °C without the least change for 1 min")]
    [InlineData(Quantity.PieceTemperature, 10, "has read 55.25 °C without the least change for 10 min")]
    public void Read_NotOneBitMoved_IsFrozenUntilItMoves(Quantity quantity, double minutes, string cause)
    {
        QualityGate gate = new(quantity, "boothAir");
        TimeSpan now = Feed(gate, 55.25, TimeSpan.Zero, TimeSpan.FromMinutes(minutes) - Second);
        Assert.True(gate.Read(now).IsGood);
        now = Feed(gate, 55.25, now + Second, now + Second);
        Reading frozen = gate.Read(now);
        Assert.Equal(ReadingQuality.Frozen, frozen.Quality);
        Assert.Equal(cause, frozen.Cause?.ToString());
        gate.Accept(Math.BitIncrement(55.25), 1, now + Second);
        Assert.True(gate.Read(now + Second).IsGood);
    }

    [Fact]
    public void Read_FewerThanThirtyEqualAnswersInAMinute_IsNotFrozen()
    {
        QualityGate gate = new(Quantity.BoothTemperature, "boothAir");
        for (int answer = 0; answer < 29; answer++)
        {
            gate.Accept(21.5, 0.1, answer * 3 * Second);
        }

        Assert.True(gate.Read(28 * 3 * Second).IsGood);
        gate.Accept(21.5, 0.1, 29 * 3 * Second);
        Assert.Equal(ReadingQuality.Frozen, gate.Read(29 * 3 * Second).Quality);
    }

    [Fact]
    public void Read_AskedOnlyTwiceInTenMinutes_IsNotFrozen()
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        gate.Accept(55.25, 1, TimeSpan.Zero);
        gate.Accept(55.25, 1, TimeSpan.FromMinutes(11));
        Assert.True(gate.Read(TimeSpan.FromMinutes(11)).IsGood);
    }

    [Theory]
    [InlineData(Quantity.ExhaustProof, 1)]
    [InlineData(Quantity.FilterPressureDrop, 0)]
    public void Read_QuantityThatMayStandStill_IsNeverFrozen(Quantity quantity, double value)
    {
        QualityGate gate = new(quantity, "exhaust");
        Assert.True(gate.Read(Feed(gate, value, TimeSpan.Zero, TimeSpan.FromHours(1))).IsGood);
    }

    [Fact]
    public void Read_TypedInValue_IsNeverFrozenAndStaleWhenItNoLongerHolds()
    {
        TimeSpan hold = TimeSpan.FromHours(2);
        QualityGate gate = new(Quantity.PieceTemperature, "typed", QualityLimits.OfTypedIn(Quantity.PieceTemperature, hold));
        TimeSpan now = Feed(gate, 18, TimeSpan.Zero, TimeSpan.FromHours(1));
        Assert.True(gate.Read(now).IsGood);
        Assert.True(gate.Read(now + hold - Second).IsGood);
        Assert.Equal(ReadingQuality.Stale, gate.Read(now + hold).Quality);
    }

    // 94 % stands for 1 °C above the sensor's own dew point; by the air's own physics that holds to 0.2 °C where booths are.
    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(35)]
    public void CondensingLimit_InAnyBooth_IsAboutOneDegreeFromDew(double temperatureC)
    {
        double limitPct = QualityLimits.Of(Quantity.BoothHumidity).CondensingFromPct!.Value;
        MoistAir air = MoistAir.FromRelativeHumidity(temperatureC, limitPct, 101_325);
        Assert.InRange(temperatureC - air.DewPointC, 0.8, 1.2);
    }

    [Fact]
    public void Read_NearDewForAMinute_IsCondensingUntilDryForTwo()
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        TimeSpan now = Feed(gate, 95, TimeSpan.Zero, TimeSpan.FromSeconds(59));
        Assert.True(gate.Read(now).IsGood);
        now = Feed(gate, 95.1, now + Second, now + Second);
        Assert.Equal(ReadingQuality.Condensing, gate.Read(now).Quality);
        now = Feed(gate, 80, now + Second, now + TimeSpan.FromSeconds(120));
        Assert.Equal(ReadingQuality.Condensing, gate.Read(now).Quality);
        now = Feed(gate, 80.1, now + Second, now + Second);
        Assert.True(gate.Read(now).IsGood);
    }

    [Fact]
    public void Read_DampAgainWhileDrying_StartsTheDryingOver()
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        TimeSpan now = Feed(gate, 95, TimeSpan.Zero, TimeSpan.FromSeconds(60));
        now = Feed(gate, 80, now + Second, now + TimeSpan.FromSeconds(100));
        now = Feed(gate, 95, now + Second, now + Second);
        now = Feed(gate, 80, now + Second, now + TimeSpan.FromSeconds(100));
        Assert.Equal(ReadingQuality.Condensing, gate.Read(now).Quality);
    }

    [Fact]
    public void Read_GustOfDamp_IsNotCondensing()
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        TimeSpan now = Feed(gate, 95, TimeSpan.Zero, TimeSpan.FromSeconds(50));
        now = Feed(gate, 90, now + Second, now + Second);
        now = Feed(gate, 95, now + Second, now + TimeSpan.FromSeconds(50));
        Assert.True(gate.Read(now).IsGood);
    }

    [Fact]
    public void Read_FogAtTheIntake_IsGoodBelowTheEndOfItsScale()
    {
        QualityGate gate = new(Quantity.IntakeHumidity, "intake");
        TimeSpan now = Feed(gate, 98, TimeSpan.Zero, TimeSpan.FromMinutes(5));
        Assert.True(gate.Read(now).IsGood);
    }

    [Fact]
    public void Accept_UncertaintyThatIsNone_IsRefused()
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        Assert.Throws<ArgumentOutOfRangeException>(() => gate.Accept(50, -1, Second));
        Assert.Throws<ArgumentOutOfRangeException>(() => gate.Accept(50, double.NaN, Second));
        Assert.Throws<ArgumentException>(() => gate.Fail(" ", Second));
    }

    private static TimeSpan Feed(QualityGate gate, double value, TimeSpan from, TimeSpan to)
    {
        for (TimeSpan at = from; at <= to; at += Second)
        {
            gate.Accept(value, 1, at);
        }

        return to;
    }
}
