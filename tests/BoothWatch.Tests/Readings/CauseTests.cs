using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Tests.Verdicts;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Readings;

/// <summary>°F = 1.8 °C + 32, a difference without the 32, by definition of the scale.</summary>
public class CauseTests
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);
    private static readonly TemperatureText Fahrenheit = new(TemperatureUnit.Fahrenheit);

    [Theory]
    [InlineData(Quantity.BoothTemperature, 71, "reads 71 °C, plausible is -20 to 60 °C", "reads 159.8 °F, plausible is -4 to 140 °F")]
    [InlineData(Quantity.BoothHumidity, -7.5, "reads -7.5 %, plausible is -5 to 110 %", "reads -7.5 %, plausible is -5 to 110 %")]
    [InlineData(Quantity.BoothHumidity, 99.75, "reads 99.75 %, the end of its scale: it is wet or broken", "reads 99.75 %, the end of its scale: it is wet or broken")]
    public void Gate_OfABadValue_SpeaksInTheUnitOfTheReader(Quantity quantity, double value, string celsius, string fahrenheit)
    {
        QualityGate gate = new(quantity, "boothAir");
        gate.Accept(value, 0.1, TimeSpan.Zero);

        Cause cause = gate.Read(TimeSpan.Zero).Cause!;

        Assert.Equal(celsius, cause.ToString());
        Assert.Equal(celsius, new TemperatureText(TemperatureUnit.Celsius).Of(cause));
        Assert.Equal(fahrenheit, Fahrenheit.Of(cause));
    }

    [Fact]
    public void Gate_OfAWetSensor_SpeaksOfADifference()
    {
        QualityGate gate = new(Quantity.BoothHumidity, "boothAir");
        for (int second = 0; second <= 60; second++)
        {
            gate.Accept(95 + (second % 2 * 0.01), 1, second * Second);
        }

        Assert.Equal("reads 95 %: it is or was within 1.8 °F of its own dew point, let it dry", Fahrenheit.Of(gate.Read(60 * Second).Cause!));
    }

    [Fact]
    public void Pair_OfThermometersThatDisagree_SpeaksInTheUnitOfTheReader()
    {
        SensorPair pair = new(1, TimeSpan.Zero);
        Reading Of(string sensor, double value) => new(Quantity.BoothTemperature, sensor, value, 0.1, TimeSpan.Zero, ReadingQuality.Good, null);

        Cause cause = pair.Combine(Of("a", 20), Of("b", 25), Second).Cause!;

        Assert.Equal("a reads 20 and b 25 °C: one of them is wrong", cause.ToString());
        Assert.Equal("a reads 68 and b 77 °F: one of them is wrong", Fahrenheit.Of(cause));
    }

    [Fact]
    public void Reasons_InFahrenheit_NameNoDegreeCelsius()
    {
        VerdictPolicy policy = new VerdictPolicy().SpeakingIn(TemperatureUnit.Fahrenheit);
        QualityGate piece = new(Quantity.PieceTemperature, "piece");
        piece.Accept(95, 0.3, TimeSpan.Zero);
        Assessor assessor = new(policy, new BlushModel().Assess, altitudeM: 0);

        // A piece sensor that reads 95 °C; air of 59 °C that the sensor may measure and the model does not hold for; a value that cannot be.
        Assessment faulty = assessor.Assess(GoodBooth.Snapshot(piece.Read(TimeSpan.Zero)), FakeFilm.Plan());
        Assessment outside = assessor.Assess(
            GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothTemperature, 59), GoodBooth.Good(Quantity.BoothHumidity, 5, 1)), FakeFilm.Plan());
        Assessment impossible = assessor.Assess(GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothTemperature, 300)), FakeFilm.Plan());

        Assert.Contains(faulty.Reasons, r => r.Finding == "no piece temperature (reads 203 °F, plausible is -4 to 176 °F)");
        Assert.Contains(outside.Reasons, r => r.Finding ==
            "blush margin unknown (the film model gave no answer: outside the range of the drying-film model: air temperature is 138.2 °F, the model holds from -0.4 to 136.4 °F)");
        Assert.Contains(impossible.Reasons, r => r.Finding == "no booth temperature (the value 572 °F cannot be true)");
        Assert.DoesNotContain(faulty.Reasons.Concat(outside.Reasons).Concat(impossible.Reasons), r => r.ToString().Contains("°C", StringComparison.Ordinal));
    }

    [Fact]
    public void OutsideModel_ByItself_SaysWhatItHoldsInCelsius()
    {
        OutsideModelException error = Assert.Throws<OutsideModelException>(() => new BlushModel().Assess(
            FakeFilm.Plan(), MoistAir.FromRelativeHumidity(20, 50, 101_325), 79, new AirUncertainty(0.1, 1), 0.3, 1, 2));

        Assert.Equal("outside the range of the drying-film model: piece temperature is 79 °C, the model holds from -18 to 78", error.Message);
        Assert.Equal((79.0, -18.0, 78.0, true), (error.Value, error.Lowest, error.Highest, error.IsTemperature));
    }

    [Fact]
    public void Cause_OfEqualWords_IsEqual()
    {
        Cause? none = (string?)null;
        Assert.Null(none);
        Assert.Equal<Cause>("bad CRC", new Cause($"bad {"CRC"}"));
        Assert.NotEqual<Cause>("bad CRC", "no acknowledge");
    }
}
