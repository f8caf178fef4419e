using BoothWatch.Readings;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Tests.Sensors;

/// <summary>What goes into an emulated chip comes out of the real binding.</summary>
public class RegisterReadTests
{
    public static TheoryData<string, double, double> Airs
    {
        get
        {
            TheoryData<string, double, double> airs = [];
            foreach (string part in (string[])["sht4x", "sht3x", "bme280"])
            {
                foreach ((double temperatureC, double humidityPct) in ((double, double)[])[(-10, 80), (0, 5), (15, 50), (21.3, 47.6), (24, 88), (30, 99), (45, 20)])
                {
                    airs.Add(part, temperatureC, humidityPct);
                }
            }

            return airs;
        }
    }

    [Theory]
    [MemberData(nameof(Airs))]
    public void Air_ThroughTheBinding_ComesBackWithinTheNoise(string part, double temperatureC, double humidityPct)
    {
        using Bench bench = Bench.With(part);
        bench.Air = new AirSignal(temperatureC, humidityPct, 98_700);
        SensorAnswer answer = bench.Sensor.Read();

        Assert.Null(answer.NoReadingCause);
        Assert.Equal(bench.Sensor.Quantities, answer.Samples.Select(sample => sample.Quantity));
        Assert.InRange(answer.Samples[0].Value, temperatureC - 0.08, temperatureC + 0.08);
        Assert.InRange(answer.Samples[1].Value, humidityPct - 0.4, humidityPct + 0.4);
        if (part == "bme280")
        {
            Assert.InRange(answer.Samples[2].Value, 98_685, 98_715);
        }
    }

    [Theory]
    [InlineData("sht4x")]
    [InlineData("sht3x")]
    [InlineData("bme280")]
    public void Air_ThatStandsStill_NeverLooksFrozen(string part)
    {
        using Bench bench = Bench.With(part);
        SensorAnswer[] answers = [.. Enumerable.Range(0, 150).Select(_ => bench.Sensor.Read())];

        // By noise alone: an eighth of the run that counts as frozen is already far out.
        for (int quantity = 0; quantity < 2; quantity++)
        {
            double[] values = [.. answers.Select(answer => answer.Samples[quantity].Value)];
            int longest = 1;
            int run = 1;
            for (int i = 1; i < values.Length; i++)
            {
                run = values[i].Equals(values[i - 1]) ? run + 1 : 1;
                longest = Math.Max(longest, run);
            }

            Assert.InRange(longest, 1, 8);
        }
    }

    [Fact]
    public void Piece_ThroughTheBinding_ComesBackWithinTheNoise()
    {
        using Bench bench = Bench.With("mlx90614");
        Assert.InRange(bench.Value(Quantity.PieceTemperature), Bench.PieceC - 0.25, Bench.PieceC + 0.25);
    }

    [Fact]
    public void Filter_ThroughTheBinding_ComesBackWithinTheNoise()
    {
        using Bench bench = Bench.With("ads1115-pressure");
        Assert.InRange(bench.Value(Quantity.FilterPressureDrop), Bench.FilterPa - 0.3, Bench.FilterPa + 0.3);
    }

    [Theory]
    [InlineData(0.02, "no supply or a broken wire")]
    [InlineData(4.9, "above its full scale")]
    public void Filter_OutsideTheRangeOfTheTransmitter_GivesNoReading(double volts, string cause)
    {
        using Bench bench = Bench.With("ads1115-pressure");
        bench.TransmitterV = volts;
        Assert.Contains(cause, bench.Cause(), StringComparison.Ordinal);
    }

    // Standard uncertainty of the limits as rectangular distributions (GUM 4.3.7): sqrt((3.5² + 0.8²)/3), 0.4/sqrt(3), ...
    [Theory]
    [InlineData("sht4x", new[] { 0.2309, 2.0728 })]
    [InlineData("sht3x", new[] { 0.2309, 2.3552 })]
    [InlineData("bme280", new[] { 0.8660, 2.6615, 86.60 })]
    [InlineData("ads1115-pressure", new[] { 2.176 })]
    public void Uncertainty_OfEachSample_IsThatOfItsTolerances(string part, double[] expected)
    {
        using Bench bench = Bench.With(part);
        double[] uncertainties = [.. bench.Sensor.Read().Samples.Select(sample => sample.StandardUncertainty)];

        Assert.Equal(expected.Length, uncertainties.Length);
        Assert.All(expected.Zip(uncertainties), pair => Assert.Equal(pair.First, pair.Second, pair.First * 0.001));
    }

    // Grey surface, Stefan and Boltzmann's law: the part, set to emissivity 1, sees E T_piece^4 + (1 - E) T_walls^4.
    // With E = 0.9 and walls 5 °C further from the piece than the part is, its error is the limit behind the uncertainty, but for
    // the curvature of the fourth power, below 8 % here.
    [Theory]
    [InlineData(Bench.PieceC, 0.4082)]
    [InlineData(Bench.PieceC + 10, 0.9129)]
    [InlineData(Bench.PieceC - 10, 0.9129)]
    public void Piece_Uncertainty_GrowsWithTheDifferenceToThePart(double partC, double expected)
    {
        using Bench bench = Bench.With("mlx90614");
        bench.Air = bench.Air with { TemperatureC = partC };
        double uncertaintyC = Assert.Single(bench.Sensor.Read().Samples).StandardUncertainty;
        Assert.Equal(expected, uncertaintyC, expected * 0.02);

        double pieceK = Bench.PieceC + 273.15;
        double wallsK = partC + (partC < Bench.PieceC ? -5 : 5) + 273.15;
        double errorC = Math.Pow((0.9 * Math.Pow(pieceK, 4)) + (0.1 * Math.Pow(wallsK, 4)), 0.25) - pieceK;
        double limitC = Math.Sqrt((3 * uncertaintyC * uncertaintyC) - (0.5 * 0.5));
        Assert.InRange(Math.Abs(errorC), 0.9 * limitC, 1.08 * limitC);
    }

    [Fact]
    public void Sht3x_OneRead_MeasuresOnce()
    {
        using Bench bench = Bench.With("sht3x");
        bench.Sensor.Read();
        CountingChip counting = new(bench.Chip);
        bench.Bus.Attach(bench.Address, counting);

        bench.Sensor.Read();

        Assert.Equal(1, counting.Reads);
    }

    [Fact]
    public void Description_OfAnEmulatedPart_SaysSo()
    {
        using Bench bench = Bench.With("sht4x");
        Assert.Equal("SHT4x at 0x44 on bus 1 (emulated)", bench.Sensor.Description);
    }

    private sealed class CountingChip(EmulatedChip inner) : EmulatedChip(1)
    {
        public int Reads { get; private set; }

        protected override void OnRead(Span<byte> bytes)
        {
            Reads++;
            inner.Read(bytes);
        }

        protected override void OnWrite(ReadOnlySpan<byte> bytes) => inner.Write(bytes);
    }
}
