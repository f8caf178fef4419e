using System.Device.Gpio;
using BoothWatch.Readings;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.TypedPiece;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Sensors;

public class SensingSetupTests
{
    private readonly FakeTimeProvider _time = new();

    [Fact]
    public void Sensors_WithoutConfiguration_AreAllEmulatedAndAnswer()
    {
        using ServiceProvider services = Services([]);
        ISensor[] sensors = [.. services.GetRequiredService<IEnumerable<ISensor>>()];

        Assert.Equal(["boothAir", "intakeAir", "piece", "exhaust", "filter"], sensors.Select(sensor => sensor.Name));
        Assert.All(sensors, sensor => Assert.Contains("(emulated)", sensor.Description, StringComparison.Ordinal));
        Assert.All(sensors, sensor => Assert.Null(sensor.Read().NoReadingCause));
        Assert.Equal(Enum.GetValues<Quantity>().Order(), sensors.SelectMany(sensor => sensor.Quantities).Order());
    }

    [Fact]
    public void Sensors_WithTheShippedConfiguration_AreTheDefaults()
    {
        string file = Path.Combine(AppContext.BaseDirectory, "config", "boothwatch.json");
        IConfigurationRoot shipped = new ConfigurationBuilder().AddJsonFile(file).Build();
        using ServiceProvider services = ServicesOf(shipped);

        SensorsOptions sensors = services.GetRequiredService<IOptions<SensorsOptions>>().Value;
        foreach (((SensorRole role, SensorOptions written), (_, SensorOptions code)) in sensors.All().Zip(new SensorsOptions().All()))
        {
            written.Address = null;
            Assert.Equivalent(code, written, strict: true);
            Assert.True(shipped.GetSection($"sensors:{role.Name}").Exists());
        }

        Assert.Equivalent(new DemoOptions(), services.GetRequiredService<IOptions<DemoOptions>>().Value, strict: true);
        Assert.All(services.GetRequiredService<IEnumerable<ISensor>>(), sensor => Assert.Null(sensor.Read().NoReadingCause));
    }

    [Fact]
    public void Sensors_OfOneShop_AgreeWithItsTruth()
    {
        using ServiceProvider services = Services([]);
        ScriptedShop shop = services.GetRequiredService<ScriptedShop>();
        ISensor[] sensors = [.. services.GetRequiredService<IEnumerable<ISensor>>()];
        _time.Advance(TimeSpan.FromSeconds(100));

        Dictionary<Quantity, Sample> samples = sensors.SelectMany(sensor => sensor.Read().Samples).ToDictionary(sample => sample.Quantity);
        ShopState truth = shop.Now();

        void Near(Quantity quantity, double expected, double tolerance) =>
            Assert.InRange(samples[quantity].Value, expected - tolerance, expected + tolerance);
        Near(Quantity.BoothTemperature, truth.BoothAir.TemperatureC, 0.1);
        Near(Quantity.BoothHumidity, truth.BoothAir.RelativeHumidityPct, 0.3);
        Near(Quantity.IntakeTemperature, truth.IntakeAir.TemperatureC, 0.1);
        Near(Quantity.IntakeHumidity, truth.IntakeAir.RelativeHumidityPct, 0.4);
        Near(Quantity.StationPressure, truth.IntakeAir.PressurePa, 20);
        Near(Quantity.PieceTemperature, truth.PieceTemperatureC, 0.3);
        Near(Quantity.ExhaustProof, 1, 0);
        Near(Quantity.FilterPressureDrop, truth.FilterPressureDropPa, 0.5);
    }

    [Theory]
    [InlineData("boothAir", "badCrc", "CRC of the humidity word")]
    [InlineData("intakeAir", "allZero", "all-zero answer")]
    [InlineData("piece", "noAcknowledge", "no acknowledge")]
    public void Fault_Scripted_HitsItsSensorInItsHoursOnly(string sensor, string kind, string cause)
    {
        using ServiceProvider services = Services(new()
        {
            ["demo:dayLengthS"] = "32400",
            ["demo:fault:sensor"] = sensor,
            ["demo:fault:kind"] = kind,
            ["demo:fault:from"] = "08:30",
            ["demo:fault:until"] = "09:00",
        });
        ISensor[] sensors = [.. services.GetRequiredService<IEnumerable<ISensor>>()];
        Assert.All(sensors, each => Assert.Null(each.Read().NoReadingCause));

        _time.Advance(TimeSpan.FromMinutes(45));
        Assert.All(sensors, each =>
        {
            string? given = each.Read().NoReadingCause;
            if (each.Name == sensor)
            {
                Assert.Contains(cause, given, StringComparison.Ordinal);
            }
            else
            {
                Assert.Null(given);
            }
        });

        _time.Advance(TimeSpan.FromMinutes(15));
        Assert.All(sensors, each => Assert.Null(each.Read().NoReadingCause));
    }

    [Fact]
    public void Contact_WithAScriptedFault_IsNotProven()
    {
        using ServiceProvider services = Services(new()
        {
            ["demo:fault:sensor"] = "exhaust",
            ["demo:fault:kind"] = "stuck",
            ["demo:fault:from"] = "08:00",
            ["demo:fault:until"] = "08:10",
        });
        ISensor exhaust = services.GetRequiredService<IEnumerable<ISensor>>().Single(sensor => sensor.Name == "exhaust");

        Assert.Equal(0, exhaust.Read().Samples[0].Value);
        _time.Advance(TimeSpan.FromSeconds(30));
        Assert.Equal(1, exhaust.Read().Samples[0].Value);
    }

    [Fact]
    public void RealParts_OnAMachineWithoutThem_AnswerNoReadingAndDoNotThrow()
    {
        using ServiceProvider services = Services(new()
        {
            ["sensors:boothAir:source"] = "real",
            ["sensors:boothAir:bus"] = "250",
            ["sensors:intakeAir:part"] = "none",
            ["sensors:piece:part"] = "none",
            ["sensors:exhaust:part"] = "none",
            ["sensors:filter:part"] = "none",
        });
        ISensor sensor = Assert.Single(services.GetRequiredService<IEnumerable<ISensor>>());
        Assert.DoesNotContain("emulated", sensor.Description, StringComparison.Ordinal);

        string? cause = sensor.Read().NoReadingCause;
        Assert.Contains("bus 250 cannot be opened", cause, StringComparison.Ordinal);
        Assert.Contains("sensors:boothAir:bus", cause, StringComparison.Ordinal);
        Assert.NotNull(sensor.Read().NoReadingCause);
    }

    [Fact]
    public void RealPin_OnAMachineWithoutPins_AnswersNoReadingAndDoesNotThrow()
    {
        using ServiceProvider services = Services(new() { ["sensors:exhaust:source"] = "real", ["sensors:proving"] = "true" });
        ISensor sensor = services.GetRequiredService<IEnumerable<ISensor>>().Single(each => each.Name == "exhaust");
        SensorAnswer answer = sensor.Read();

        // A development machine may have a GPIO chip; then there is a reading. What must not happen is a throw.
        Assert.True(answer.NoReadingCause is null ? answer.Samples.Length == 1 : answer.NoReadingCause.Contains("GPIO 23", StringComparison.Ordinal));
    }

    [Fact]
    public void Contact_OnAPinInUse_AnswersNoReadingAndLeavesThePinAlone()
    {
        using ServiceProvider services = Services([]);
        GpioSource pins = services.GetRequiredService<GpioSource>();
        pins.Controller(SignalSource.Emulated).OpenPin(23, PinMode.Output, PinValue.High);
        ISensor exhaust = services.GetRequiredService<IEnumerable<ISensor>>().Single(sensor => sensor.Name == "exhaust");

        Assert.Contains("give sensors:exhaust:pin another one", exhaust.Read().NoReadingCause, StringComparison.Ordinal);
        Assert.Equal(PinValue.High, pins.Virtual.Driven(23));
    }

    [Theory]
    [InlineData("false", PinMode.InputPullUp)]
    [InlineData("true", PinMode.InputPullDown)]
    public void Contact_WithABrokenWire_IsNotProven(string activeHigh, PinMode mode)
    {
        using ServiceProvider services = Services(new() { ["sensors:exhaust:activeHigh"] = activeHigh });
        GpioSource pins = services.GetRequiredService<GpioSource>();
        ISensor exhaust = services.GetRequiredService<IEnumerable<ISensor>>().Single(sensor => sensor.Name == "exhaust");
        Assert.Equal(1, exhaust.Read().Samples[0].Value);
        Assert.Equal(mode, pins.Virtual.OpenMode(23));

        pins.Virtual.FollowInput(23, () => null);
        Assert.Equal(0, exhaust.Read().Samples[0].Value);
    }

    [Fact]
    public void Typed_Piece_HoldsForItsTimeAndIsReplacedAtRunTime()
    {
        using ServiceProvider services = Services(new()
        {
            ["sensors:piece:part"] = "typed",
            ["sensors:piece:holdS"] = "600",
            ["sensors:proving"] = "true",
        });
        ISensor piece = services.GetRequiredService<IEnumerable<ISensor>>().Single(sensor => sensor.Name == "piece");
        services.GetRequiredService<TypedPieceTemperature>().Enter(18.5);
        Assert.Equal(18.5, piece.Read().Samples[0].Value);
        Assert.Equal(TimeSpan.FromSeconds(600), piece.Hold);

        _time.Advance(TimeSpan.FromSeconds(599));
        Assert.Equal(TimeSpan.FromSeconds(599), piece.Read().Samples[0].Age);

        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Contains("type it in again", piece.Read().NoReadingCause, StringComparison.Ordinal);

        services.GetRequiredService<TypedPieceTemperature>().Enter(19);
        Assert.Equal(19, piece.Read().Samples[0].Value);
    }

    [Fact]
    public void Typed_PieceNeverTyped_GivesNoReading()
    {
        using ServiceProvider services = Services(new() { ["sensors:piece:part"] = "typed", ["sensors:proving"] = "true" });
        ISensor piece = services.GetRequiredService<IEnumerable<ISensor>>().Single(sensor => sensor.Name == "piece");

        Assert.Contains("no piece temperature has been typed in", piece.Read().NoReadingCause, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => services.GetRequiredService<TypedPieceTemperature>().Enter(double.NaN));
    }

    [Theory]
    [InlineData("sensors:boothAir:part", "sht9x", "sensors:boothAir:part is sht9x; give one of sht4x, sht3x, bme280, or none")]
    [InlineData("sensors:piece:part", "sht4x", "sensors:piece:part is sht4x; give one of mlx90614, typed, or none")]
    [InlineData("sensors:boothAir:source", "reel", "sensors:boothAir:source is reel; give emulated or real")]
    [InlineData("sensors:boothAir:bus", "-1", "sensors:boothAir:bus is -1; give the number n of /dev/i2c-n, from 0 to 255")]
    [InlineData("sensors:boothAir:address", "0x40", "sensors:boothAir:address is 0x40; sht4x can be at 0x44 or 0x45 or 0x46, for example \"0x44\"")]
    [InlineData("sensors:boothAir:address", "68", "sensors:boothAir:address is 68; sht4x can be at")]
    [InlineData("sensors:exhaust:pin", "54", "sensors:exhaust:pin is 54; give a GPIO number from 0 to 53, for example 23")]
    [InlineData("sensors:exhaust:pull", "down", "sensors:exhaust:pull is down; with activeHigh false give up, or none")]
    [InlineData("sensors:filter:channel", "4", "sensors:filter:channel is 4; give the analog input from 0 to 3")]
    [InlineData("sensors:filter:fullScaleV", "0.2", "sensors:filter:fullScaleV is 0.2; give V above zeroV (0.5)")]
    [InlineData("sensors:filter:fullScalePa", "NaN", "sensors:filter:fullScalePa is NaN; give Pa from 10 to 10000")]
    [InlineData("sensors:filter:address", "0x4C", "sensors:filter:address is 0x4C; ads1115-pressure can be at 0x48 or 0x49 or 0x4A or 0x4B")]
    public void Sensors_WithAWrongSetting_FailNamingIt(string key, string value, string error) =>
        AssertFails<SensorsOptions>(new() { [key] = value }, error);

    [Fact]
    public void Sensors_TwoAtOneAddress_FailNamingBoth() => AssertFails<SensorsOptions>(
        new() { ["sensors:intakeAir:part"] = "sht3x", ["sensors:intakeAir:address"] = "0x44" },
        "sensors:intakeAir:address is 0x44 on bus 1, where sensors:boothAir already is");

    [Fact]
    public void Sensors_TwoWithStationPressure_FailNamingBoth() => AssertFails<SensorsOptions>(
        new() { ["sensors:boothAir:part"] = "bme280", ["sensors:boothAir:address"] = "0x77" },
        "sensors:intakeAir:stationPressure is true, and so is that of sensors:boothAir; set one of them to false");

    [Fact]
    public void Sensors_OneRealAndTheRestLeftOut_FailNamingEach() => AssertFails<SensorsOptions>(
        new() { ["sensors:boothAir:source"] = "real" },
        "sensors:intakeAir, sensors:piece, sensors:exhaust, sensors:filter are emulated beside sensors:boothAir, which is real; give each the source real or the part none, or set sensors:proving");

    [Fact]
    public void Sensors_TypedPieceBesideEmulatedParts_CountsAsReal() => AssertFails<SensorsOptions>(
        new() { ["sensors:piece:part"] = "typed", ["sensors:filter:part"] = "none" },
        "sensors:boothAir, sensors:intakeAir, sensors:exhaust are emulated beside sensors:piece, which is real;");

    [Fact]
    public void Sensors_OneRealAndTheRestNotFitted_AreGood()
    {
        using ServiceProvider services = Services(new()
        {
            ["sensors:boothAir:source"] = "real",
            ["sensors:intakeAir:part"] = "none",
            ["sensors:filter:part"] = "none",
            ["sensors:piece:part"] = "typed",
            ["sensors:exhaust:source"] = "real",
        });
        Assert.All(services.GetRequiredService<IEnumerable<ISensor>>(), sensor => Assert.False(sensor.IsEmulated));
    }

    [Fact]
    public void BoothAirCheck_Emulated_ReadsALittleBesideTheFirstAndMeasuresTheSame()
    {
        using ServiceProvider services = Services(new() { ["sensors:boothAirCheck:part"] = "sht3x", ["sensors:boothAirCheck:address"] = "0x45" });
        ISensor[] sensors = [.. services.GetRequiredService<IEnumerable<ISensor>>().Where(sensor => sensor.Name.StartsWith("boothAir", StringComparison.Ordinal))];

        Assert.Equal(["boothAir", "boothAirCheck"], sensors.Select(sensor => sensor.Name));
        Assert.Equal(sensors[0].Quantities, sensors[1].Quantities);
        double[] first = [.. sensors[0].Read().Samples.Select(sample => sample.Value)];
        double[] second = [.. sensors[1].Read().Samples.Select(sample => sample.Value)];
        Assert.InRange(second[0] - first[0], 0.02, 0.3);
        Assert.InRange(second[1] - first[1], -1, -0.2);
    }

    [Fact]
    public void Sensors_TypedWithNonsense_FailsNamingIt() => AssertFails<SensorsOptions>(
        new() { ["sensors:proving"] = "true", ["sensors:piece:part"] = "typed", ["sensors:piece:holdS"] = "5" },
        "sensors:piece:holdS is 5; give seconds from 60 to 86400");

    [Fact]
    public void Sensors_WithSeveralWrongSettings_FailWithAllOfThem() => AssertFails<SensorsOptions>(
        new() { ["sensors:boothAir:part"] = "x", ["sensors:exhaust:pin"] = "-1", ["sensors:filter:bus"] = "999" },
        "sensors:boothAir:part is x",
        "sensors:exhaust:pin is -1",
        "sensors:filter:bus is 999");

    [Theory]
    [InlineData("demo:dayLengthS", "5", "demo:dayLengthS is 5; give seconds from 10 to 86400")]
    [InlineData("demo:startAt", "17:00", "demo:startAt is 17:00; give a shop time from 08:00 to 16:59")]
    [InlineData("demo:fault:sensor", "both", "demo:fault:sensor is both; give one of boothAir, boothAirCheck, intakeAir, piece, exhaust, filter, or nothing")]
    [InlineData("demo:fault:kind", "broken", "demo:fault:kind is broken; give one of none, noAcknowledge, badCrc")]
    [InlineData("demo:fault:kind", "7000", "demo:fault:kind is 7000; give one of none")]
    public void Demo_WithAWrongSetting_FailsNamingIt(string key, string value, string error) =>
        AssertFails<DemoOptions>(new() { [key] = value }, error);

    private void AssertFails<TOptions>(Dictionary<string, string?> settings, params string[] errors)
        where TOptions : class
    {
        using ServiceProvider services = Services(settings);
        OptionsValidationException failure = Assert.Throws<OptionsValidationException>(
            () => services.GetRequiredService<IOptions<TOptions>>().Value);

        Assert.Equal(errors.Length, failure.Failures.Count());
        Assert.All(errors, error => Assert.Contains(failure.Failures, actual => actual.StartsWith(error, StringComparison.Ordinal)));
    }

    private ServiceProvider Services(Dictionary<string, string?> settings) =>
        ServicesOf(new ConfigurationBuilder().AddInMemoryCollection(settings).Build());

    private ServiceProvider ServicesOf(IConfiguration configuration) => new ServiceCollection()
        .AddSingleton(configuration)
        .AddSingleton<TimeProvider>(_time)
        .AddSensing()
        .BuildServiceProvider(new ServiceProviderOptions { ValidateOnBuild = true, ValidateScopes = true });
}
