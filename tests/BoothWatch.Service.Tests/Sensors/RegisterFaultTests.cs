using BoothWatch.Readings;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Tests.Sensors;

/// <summary>Each part, through its real binding, with each fault made in its registers.</summary>
public class RegisterFaultTests
{
    public static TheoryData<string, BusFault, string> Faults => new()
    {
        { "sht4x", BusFault.NoAcknowledge, "no acknowledge from address 0x44 on bus 1" },
        { "sht4x", BusFault.BadCrc, "CRC of the humidity word is 0x" },
        { "sht4x", BusFault.AllZero, "all-zero answer" },
        { "sht4x", BusFault.AllOnes, "all ones" },
        { "sht3x", BusFault.NoAcknowledge, "no acknowledge from address 0x44 on bus 1" },
        { "sht3x", BusFault.BadCrc, "CRC of the humidity word is 0x" },
        { "sht3x", BusFault.AllZero, "all-zero answer" },
        { "sht3x", BusFault.AllOnes, "all ones" },
        { "bme280", BusFault.NoAcknowledge, "no acknowledge from address 0x76 on bus 1" },
        { "bme280", BusFault.AllZero, "all-zero answer" },
        { "bme280", BusFault.AllOnes, "all ones" },
        { "mlx90614", BusFault.NoAcknowledge, "no acknowledge from address 0x5A on bus 1" },
        { "mlx90614", BusFault.BadCrc, "packet error code is 0x" },
        { "mlx90614", BusFault.AllZero, "all-zero answer" },
        { "mlx90614", BusFault.AllOnes, "all ones" },
        { "ads1115-pressure", BusFault.NoAcknowledge, "no acknowledge from address 0x48 on bus 1" },
        { "ads1115-pressure", BusFault.AllZero, "all-zero answer" },
        { "ads1115-pressure", BusFault.AllOnes, "all ones" },
        { "ads1115-pressure", BusFault.Saturated, "above its full scale" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Fault_FromTheStart_GivesNoReadingWithItsCause(string part, BusFault fault, string cause)
    {
        using Bench bench = Bench.With(part);
        bench.Fault = fault;

        Assert.Contains(cause, bench.Cause(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void Fault_WhileRunning_GivesNoReadingAndEndsWithTheFault(string part, BusFault fault, string cause)
    {
        using Bench bench = Bench.With(part);
        Assert.Null(bench.Sensor.Read().NoReadingCause);

        bench.Fault = fault;
        Assert.Contains(cause, bench.Cause(), StringComparison.Ordinal);
        Assert.Contains(cause, bench.Cause(), StringComparison.Ordinal);

        bench.Fault = BusFault.None;
        Assert.Null(bench.Sensor.Read().NoReadingCause);
    }

    [Theory]
    [MemberData(nameof(Bench.Parts), MemberType = typeof(Bench))]
    public void Address_WithoutAChip_GivesNoReadingUntilItIsPluggedIn(string part)
    {
        using Bench bench = Bench.With(part);
        bench.Bus.Detach(bench.Address);
        Assert.Contains("no acknowledge", bench.Cause(), StringComparison.Ordinal);

        bench.Plug();
        Assert.Null(bench.Sensor.Read().NoReadingCause);
    }

    [Theory]
    [MemberData(nameof(Bench.Parts), MemberType = typeof(Bench))]
    public void Stuck_WhileTheShopMoves_GivesTheVerySameValues(string part)
    {
        using Bench bench = Bench.With(part);
        SensorAnswer before = bench.Sensor.Read();
        bench.Fault = BusFault.Stuck;
        bench.Air = new AirSignal(30, 80, 99_000);
        SensorAnswer after = bench.Sensor.Read();

        Assert.Null(after.NoReadingCause);
        Assert.Equal(before.Samples.Select(sample => sample.Value), after.Samples.Select(sample => sample.Value));
    }

    [Theory]
    [MemberData(nameof(Bench.Parts), MemberType = typeof(Bench))]
    public void Noise_InAStillShop_KeepsValuesMoving(string part)
    {
        using Bench bench = Bench.With(part);
        double[][] reads = [.. Enumerable.Range(0, 6).Select(_ => bench.Sensor.Read().Samples.Select(sample => sample.Value).ToArray())];

        for (int sample = 0; sample < reads[0].Length; sample++)
        {
            Assert.True(reads.Select(read => read[sample]).Distinct().Count() > 1, $"sample {sample} of {part} never moved");
        }
    }

    [Theory]
    [InlineData("sht4x", Quantity.BoothHumidity)]
    [InlineData("sht3x", Quantity.BoothHumidity)]
    [InlineData("bme280", Quantity.BoothHumidity)]
    [InlineData("mlx90614", Quantity.PieceTemperature)]
    [InlineData("ads1115-pressure", Quantity.FilterPressureDrop)]
    public void Drift_OverManyReads_WalksAwayFromTheTruth(string part, Quantity quantity)
    {
        using Bench bench = Bench.With(part);
        double start = bench.Value(quantity);
        bench.Fault = BusFault.Drift;
        double end = start;
        for (int i = 0; i < 20; i++)
        {
            end = bench.Value(quantity);
        }

        Assert.True(end > start + 0.4, $"{part} drifted from {start} to {end} only");
    }

    [Theory]
    [InlineData("sht4x")]
    [InlineData("sht3x")]
    [InlineData("bme280")]
    public void Saturated_Humidity_ReadsTheEndOfItsScale(string part)
    {
        using Bench bench = Bench.With(part);
        bench.Fault = BusFault.Saturated;

        Assert.Equal(100, bench.Value(Quantity.BoothHumidity), 2);
    }

    [Fact]
    public void Mlx90614_WithItsErrorFlag_GivesNoReading()
    {
        using Bench bench = Bench.With("mlx90614");
        bench.Bus.Attach(bench.Address, new FlaggedMlx90614());

        Assert.Contains("flags its temperature as in error", bench.Cause(), StringComparison.Ordinal);
    }

    [Fact]
    public void Bme280_ThatLostItsSettings_GivesNoReadingAndIsSetUpAgain()
    {
        using Bench bench = Bench.With("bme280");
        bench.Value(Quantity.BoothHumidity);
        bench.Chip.Write([0xE0, 0xB6]);

        Assert.Contains("did not measure it", bench.Cause(), StringComparison.Ordinal);
        Assert.InRange(bench.Value(Quantity.BoothHumidity), 47, 48.2);
    }

    [Fact]
    public void Bme280_OfAnotherChipId_GivesNoReadingWithTheId()
    {
        using Bench bench = Bench.With("bme280");
        bench.Bus.Attach(bench.Address, new FixedChip(0x58));

        Assert.Contains("chip id is 0x58, expected 0x60", bench.Cause(), StringComparison.Ordinal);
    }

    /// <summary>Why answers are observed: the bindings by themselves pass these faults on as values, or as nothing.</summary>
    [Fact]
    public void Bindings_Alone_HideBadCheckBytes()
    {
        using Bench sht3x = Bench.With("sht3x");
        sht3x.Fault = BusFault.BadCrc;
        using (Iot.Device.Sht3x.Sht3x binding = new(sht3x.Bus.CreateDevice(sht3x.Address)))
        {
            Assert.Equal(0.0, binding.Temperature.DegreesCelsius);
            Assert.Equal(0.0, binding.Humidity.Percent);
        }

        using Bench mlx90614 = Bench.With("mlx90614");
        mlx90614.Fault = BusFault.BadCrc;
        using (Iot.Device.Mlx90614.Mlx90614 binding = new(mlx90614.Bus.CreateDevice(mlx90614.Address)))
        {
            Assert.InRange(binding.ReadObjectTemperature().DegreesCelsius, 17, 18);
        }
    }

    private sealed class FixedChip(byte value) : EmulatedChip(1)
    {
        protected override void OnRead(Span<byte> bytes) => bytes.Fill(value);

        protected override void OnWrite(ReadOnlySpan<byte> bytes)
        {
        }
    }

    private sealed class FlaggedMlx90614 : EmulatedChip
    {
        public FlaggedMlx90614()
            : base(1)
        {
        }

        protected override void OnRead(Span<byte> bytes)
        {
            byte[] word = [0x12, 0xBA];
            word.CopyTo(bytes);
            bytes[2] = Crc8.PacketErrorCode([0xB4, 0x07, 0xB5, .. word]);
        }

        protected override void OnWrite(ReadOnlySpan<byte> bytes)
        {
        }
    }
}
