using BoothWatch.Readings;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Readings;

/// <summary>What holds for a gate after any history of answers, failures and silence.</summary>
public class QualityGateProperties
{
    private static readonly QualityLimits Limits = QualityLimits.Of(Quantity.BoothHumidity);

    [Property(MaxTest = 300)]
    public void Read_NothingButFailures_IsNeverGood(byte[] gaps)
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        TimeSpan now = TimeSpan.Zero;
        foreach (byte gap in gaps)
        {
            now += TimeSpan.FromMilliseconds(20 * gap);
            gate.Fail("no acknowledge", now);
            Reading reading = gate.Read(now);
            Assert.Equal(ReadingQuality.NoReading, reading.Quality);
            Assert.False(reading.IsGood);
        }
    }

    // Each step is a gap of time and what the sensor then does: most give a value, some fail, some say nothing.
    [Property(MaxTest = 500)]
    public void Read_AnyHistory_IsGoodOnlyForAFreshPlausibleValueAndCarriesItsAge((byte Gap, byte What)[] steps)
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        TimeSpan now = TimeSpan.Zero;
        double? last = null;
        TimeSpan lastAt = TimeSpan.Zero;
        string? failure = null;
        foreach ((byte gap, byte what) in steps)
        {
            now += TimeSpan.FromMilliseconds(1 + (30 * gap));
            if (what < 160)
            {
                last = what == 159 ? double.NaN : -20 + what;
                lastAt = now;
                failure = null;
                gate.Accept(last.Value, 1, now);
            }
            else if (what < 220)
            {
                failure = $"failure {what}";
                gate.Fail(failure, now);
            }

            Reading reading = gate.Read(now);
            Assert.Equal(reading.Quality == ReadingQuality.Good && reading.Value is not null, reading.IsGood);
            Assert.Equal(last is null ? TimeSpan.Zero : now - lastAt, reading.Age);
            Assert.Equal(last is double given && double.IsFinite(given) ? given : null, reading.Value);
            if (reading.Quality == ReadingQuality.Good)
            {
                Assert.NotNull(last);
                Assert.True(now - lastAt < Limits.StaleAfter);
                Assert.InRange(last.Value, Limits.DryEndPct!.Value, Limits.SaturatedFromPct!.Value);
                Assert.Equal(failure, reading.Cause?.ToString());
            }
            else
            {
                Assert.False(string.IsNullOrWhiteSpace(reading.Cause?.ToString()));
            }
        }
    }

    // No false alarm either: a moving value in the middle of the scale, asked every second, is good whatever went before.
    [Property(MaxTest = 200)]
    public void Read_AnyHistoryThenThreeDryMinutes_IsGoodAgain((byte Gap, byte What)[] steps)
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        TimeSpan now = TimeSpan.Zero;
        foreach ((byte gap, byte what) in steps)
        {
            now += TimeSpan.FromMilliseconds(1 + (300 * gap));
            if (what < 200)
            {
                gate.Accept(what, 1, now);
            }
            else
            {
                gate.Fail("no acknowledge", now);
            }
        }

        for (int second = 0; second < 180; second++)
        {
            now += TimeSpan.FromSeconds(1);
            gate.Accept(50 + (second % 2), 1, now);
        }

        Assert.True(gate.Read(now).IsGood);
        Assert.Null(gate.Read(now).Cause);
    }
}
