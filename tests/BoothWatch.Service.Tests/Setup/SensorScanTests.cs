using System.Text.Json;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Bme280;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.FilterPressure;
using BoothWatch.Service.Sensors.Mlx90614;
using BoothWatch.Service.Sensors.Sht3x;
using BoothWatch.Service.Sensors.Sht4x;
using BoothWatch.Service.Setup;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs.Mqtt;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>Looking for parts on the emulated bus of the running service, whose poller reads its own sensors meanwhile.</summary>
public sealed class SensorScanTests
{
    private static readonly TimeProvider Time = TimeProvider.System;

    [Theory]
    [InlineData("sht4x", 0x45, "boothAirCheck")]
    [InlineData("sht3x", 0x45, "boothAirCheck")]
    [InlineData("bme280", 0x77, "boothAirCheck")]
    public async Task Part_ThatIsNotConfigured_IsFoundWithTheLineThatConfiguresIt(string part, int address, string role)
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"));
        host.Services.GetRequiredService<I2cBusSource>().Emulated(1).Attach(address, Chip(part, address));
        JsonElement found = Assert.Single(New(await Scan(host)));
        Assert.Equal(part, found.GetProperty("part").GetString());
        string line = found.GetProperty("line").GetString()!;
        Assert.Equal($$"""
            "{{role}}": { "part": "{{part}}", "source": "emulated", "bus": 1, "address": "0x{{address:X2}}"{{(part == "bme280" ? ", \"stationPressure\": false" : "")}} },
            """, line);

        // The line is good where it belongs.
        ConfigurationFile file = ConfigurationFile.Parse(
            Path.Combine(RepositoryFile.Root, "config/boothwatch.json"), System.Text.Encoding.UTF8.GetBytes($$"""{ "sensors": { {{line}} } }"""));
        Assert.Empty(ConfigurationCheck.Errors(file));
    }

    [Theory]
    [InlineData("mlx90614", Mlx90614Sensor.DefaultAddress, "piece")]
    [InlineData("ads1115-pressure", 0x49, "filter")]
    public async Task Part_WhoseSensorHasNoPart_IsOfferedForIt(string part, int address, string role)
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"), ("sensors:piece:part", "none"), ("sensors:filter:part", "none"));
        host.Services.GetRequiredService<I2cBusSource>().Emulated(1).Attach(address, Chip(part, address));
        JsonElement found = Assert.Single(New(await Scan(host)));
        Assert.StartsWith($"\"{role}\": {{ \"part\": \"{part}\"", found.GetProperty("line").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Parts_ThatAreConfigured_AreTakenFromTheirReadings_AndTheOthersAreSilent()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"));
        SensorScan scan = host.Services.GetRequiredService<SensorScan>();
        await Eventually.TrueAsync(() => scan.Look().Lines.All(line => line.IsGood), "all answer");

        // However often it looks, the readings of the sensors stay good.
        ScanAnswer answer = scan.Look();
        for (int look = 0; look < 200; look++)
        {
            answer = scan.Look();
            Assert.All(answer.Lines, line => Assert.True(line.IsGood, line.Finding));
        }

        Assert.Equal(
            ["boothAir sht4x 0x44", "filter ads1115-pressure 0x48", "intakeAir bme280 0x76", "piece mlx90614 0x5A"],
            answer.Lines.Select(line => $"{line.ConfiguredAs} {line.Part} {line.Address}").Order(StringComparer.Ordinal));
        Assert.All(answer.Lines, line => Assert.Null(line.Line));

        // 0x45, 0x46, 0x49 to 0x4B and 0x77.
        Assert.Equal(6, answer.Silent);
        Assert.Empty(answer.Troubles);
    }

    [Fact]
    public async Task ConfiguredPart_ThatDoesNotAnswer_IsNamedWithItsCause_AndNotAsked()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"));
        EmulatedI2cBus bus = host.Services.GetRequiredService<I2cBusSource>().Emulated(1);
        bus.Detach(Bme280Sensor.DefaultAddress);
        SensorScan scan = host.Services.GetRequiredService<SensorScan>();
        string Finding() => scan.Look().Lines.Single(line => line.ConfiguredAs == "intakeAir").Finding;
        await Eventually.TrueAsync(() => Finding().Contains("no acknowledge", StringComparison.Ordinal), "the missing part is named");
        Assert.StartsWith("configured; ", Finding(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(BusFault.NoAcknowledge, false)]
    [InlineData(BusFault.AllZero, true)]
    [InlineData(BusFault.AllOnes, true)]
    public async Task Part_ThatDoesNotAnswerAsItself_IsNotOffered(BusFault fault, bool answers)
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"));
        EmulatedChip chip = Chip("bme280", 0x77);
        chip.Fault = () => fault;
        host.Services.GetRequiredService<I2cBusSource>().Emulated(1).Attach(0x77, chip);
        JsonElement scan = await Scan(host);
        JsonElement[] there = [.. scan.GetProperty("lines").EnumerateArray().Where(line => line.GetProperty("address").GetString() == "0x77")];
        Assert.Equal(answers ? 1 : 0, there.Length);
        Assert.Empty(New(scan));
        Assert.All(there, line => Assert.Contains("not as bme280", line.GetProperty("finding").GetString(), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Questions_ToAStranger_AreForItsIdentityAlone()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"));
        Stranger stranger = new();
        EmulatedI2cBus bus = host.Services.GetRequiredService<I2cBusSource>().Emulated(1);
        int[] free = [0x45, 0x46, 0x49, 0x4A, 0x4B, 0x77];
        Array.ForEach(free, address => bus.Attach(address, stranger));
        JsonElement scan = await Scan(host);
        Assert.Equal(free.Length, scan.GetProperty("lines").EnumerateArray().Count(line => line.GetProperty("part").ValueKind == JsonValueKind.Null));

        // Identity of SHT4x, of SHT3x, thresholds of the ADS1115, chip id of the BME280: numbers of what to read, and never a value for it.
        Assert.Equal(["02", "03", "89", "D0", "F32D"], stranger.Written.Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Bus_ThatCannotBeOpened_IsNamed_AndTheOthersAreLookedAt()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"));
        SensorScan scan = new(
            host.Services.GetRequiredService<I2cBusSource>(),
            host.Services.GetRequiredService<SnapshotBoard>(),
            Options.Create(new SensorsOptions { BoothAirCheck = new() { Part = "sht4x", Source = "real", Bus = 250 } }),
            Time,
            _ => false);
        ScanAnswer answer = scan.Look();
        Assert.StartsWith("/dev/i2c-250 cannot be looked at", Assert.Single(answer.Troubles), StringComparison.Ordinal);
        Assert.Contains("emulated bus 1", answer.Buses);
        Assert.Contains(answer.Lines, line => line.ConfiguredAs == "boothAir");
    }

    private static async Task<JsonElement> Scan(JobHost host)
    {
        (int status, JsonElement answer) = await host.Post("/api/setup/scan", "{}");
        Assert.Equal(200, status);
        Assert.Empty(answer.GetProperty("troubles").EnumerateArray());
        return answer;
    }

    private static IEnumerable<JsonElement> New(JsonElement scan) => scan.GetProperty("lines").EnumerateArray().Where(line => line.GetProperty("line").ValueKind == JsonValueKind.String);

    private static EmulatedChip Chip(string part, int address)
    {
        AirSignal air = new(21, 50, 101_300);
        return part switch
        {
            "sht4x" => new EmulatedSht4x(() => air, Time, 1),
            "sht3x" => new EmulatedSht3x(() => air, Time, 1),
            "bme280" => new EmulatedBme280(() => air, Time, 1),
            "mlx90614" => new EmulatedMlx90614(() => 20, () => 21, address, 1),
            _ => new EmulatedAds1115(_ => 1, Time, 1),
        };
    }

    /// <summary>A device that is none of the parts: it takes everything, and answers what no part would.</summary>
    private sealed class Stranger() : EmulatedChip(1)
    {
        public List<string> Written { get; } = [];

        protected override void OnWrite(ReadOnlySpan<byte> bytes) => Written.Add(Convert.ToHexString(bytes));

        protected override void OnRead(Span<byte> bytes) => bytes.Fill(0x11);
    }
}
