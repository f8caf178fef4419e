using System.Globalization;
using System.Text;
using BoothWatch.Readings;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.MqttAir;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Sensors.MqttAir;

public class MqttAirSensorTests
{
    private readonly FakeTimeProvider _time = new(TestClock);
    private readonly AirMessages _messages;

    public MqttAirSensorTests() => _messages = new AirMessages(_time);

    private static DateTimeOffset TestClock => new(2026, 9, 7, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Reading_OfPlainNumbers_IsTemperatureAndHumidity()
    {
        using MqttAirSensor sensor = Plain();
        Send("yard/t", "18.5");
        Send("yard/h", " 61 \n");

        SensorAnswer answer = sensor.Read();

        Assert.Null(answer.NoReadingCause);
        Assert.Equal(
            [(Quantity.IntakeTemperature, 18.5), (Quantity.IntakeHumidity, 61)],
            answer.Samples.Select(sample => (sample.Quantity, sample.Value)));

        // GUM 4.3.7: a rectangular tolerance of ±0.5 has the standard uncertainty 0.5 / √3 = 0.2887.
        Assert.Equal(0.2887, answer.Samples[0].StandardUncertainty, 4);
    }

    // 68 °F = 20 °C and 293.15 K = 20 °C by definition (ITS-90; NIST SP 811, appendix B.9).
    [Theory]
    [InlineData("C", "20")]
    [InlineData("F", "68")]
    [InlineData("K", "293.15")]
    public void Temperature_InItsUnit_IsReadInCelsius(string unit, string sent)
    {
        using MqttAirSensor sensor = Plain(options => options.TemperatureUnit = unit);
        Send("yard/t", sent);
        Send("yard/h", "50");

        Assert.Equal(20, sensor.Read().Samples[0].Value, 9);
    }

    [Fact]
    public void Reading_OfOneJsonMessage_IsFoundByItsPointers()
    {
        using MqttAirSensor sensor = Json();
        Send("yard/air", """{"air":{"t":17.25,"rh":"62.5"},"at":"2026-09-07T07:59:50Z"}""");

        Assert.Equal([17.25, 62.5], sensor.Read().Samples.Select(sample => sample.Value));
    }

    [Fact]
    public void Reading_BeforeAnyMessage_IsNone()
    {
        using MqttAirSensor sensor = Plain();

        Assert.Contains("no message has come yet", sensor.Read().NoReadingCause, StringComparison.Ordinal);
    }

    [Fact]
    public void Reading_WithOnlyOneOfTheTwo_IsNone()
    {
        using MqttAirSensor sensor = Plain();
        Send("yard/t", "18.5");

        Assert.StartsWith("yard/h: no message", sensor.Read().NoReadingCause, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("warm", "is \"warm\", not a number")]
    [InlineData("", "is \"\", not a number")]
    [InlineData("NaN", "not a number")]
    [InlineData("1e999", "not a number")]
    [InlineData("18,5", "not a number")]
    [InlineData("293.15", "293.15 °C, outside -60 to 60: check its unit")]
    [InlineData("-273", "outside -60 to 60")]
    public void Message_ThatIsNoReading_TakesTheReadingAwayAndSaysWhy(string payload, string cause)
    {
        using MqttAirSensor sensor = Plain();
        Send("yard/t", "18.5");
        Send("yard/h", "61");
        Assert.Null(sensor.Read().NoReadingCause);

        Send("yard/t", payload);

        Assert.Contains(cause, sensor.Read().NoReadingCause, StringComparison.Ordinal);
        Send("yard/t", "18.6");
        Assert.Null(sensor.Read().NoReadingCause);
    }

    [Theory]
    [InlineData("not json", "is not JSON")]
    [InlineData("""{"air":{"t":null,"rh":60},"at":"2026-09-07T08:00:00Z"}""", "no number at /air/t")]
    [InlineData("""{"air":{"rh":60},"at":"2026-09-07T08:00:00Z"}""", "no number at /air/t")]
    [InlineData("""{"air":{"t":20,"rh":60}}""", "no time at /at")]
    [InlineData("""{"air":{"t":20,"rh":60},"at":"soon"}""", "no time at /at")]
    [InlineData("""{"air":{"t":20,"rh":60},"at":"2026-09-07T08:01:01Z"}""", "61 s ahead: check the clocks")]
    public void JsonMessage_ThatIsNoReading_SaysWhy(string payload, string cause)
    {
        using MqttAirSensor sensor = Json();
        Send("yard/air", payload);

        Assert.Contains(cause, sensor.Read().NoReadingCause, StringComparison.Ordinal);
    }

    [Fact]
    public void Message_OlderThanAllowed_CountsNoMore()
    {
        using MqttAirSensor sensor = Plain(options => options.MaxAgeS = 60);
        Send("yard/t", "18.5");
        Send("yard/h", "61");
        _time.Advance(TimeSpan.FromSeconds(60));
        Assert.Null(sensor.Read().NoReadingCause);

        _time.Advance(TimeSpan.FromSeconds(1));

        Assert.Equal("yard/t: the last message is 61 s old, and it counts for 60 s", sensor.Read().NoReadingCause);
    }

    [Fact]
    public void RetainedMessage_WithoutATime_IsOldNews()
    {
        using MqttAirSensor sensor = Plain();
        Send("yard/t", "18.5", retained: true);
        Send("yard/h", "61", retained: true);
        Assert.Contains("its age is not known", sensor.Read().NoReadingCause, StringComparison.Ordinal);

        Send("yard/t", "18.5");
        Send("yard/h", "61");

        Assert.Null(sensor.Read().NoReadingCause);
    }

    [Theory]
    [InlineData("\"2026-09-07T07:50:30Z\"", true)]
    [InlineData("\"2026-09-07T09:50:30+02:00\"", true)]
    [InlineData("1788767430", true)] // 2026-09-07T07:50:30Z, from `date -u -d @1788767430`
    [InlineData("\"2026-09-07T07:49:30Z\"", false)]
    public void RetainedMessage_WithATime_IsAsOldAsThatTimeSays(string at, bool counts)
    {
        using MqttAirSensor sensor = Json();
        Send("yard/air", $$$"""{"air":{"t":17,"rh":60},"at":{{{at}}}}""", retained: true);

        Assert.Equal(counts, sensor.Read().NoReadingCause is null);
        _time.Advance(TimeSpan.FromSeconds(31));
        Assert.NotNull(sensor.Read().NoReadingCause);
    }

    [Fact]
    public void Message_OlderThanTheLastOne_IsPassedOver()
    {
        using MqttAirSensor sensor = Json();
        Send("yard/air", """{"air":{"t":17,"rh":60},"at":"2026-09-07T08:00:00Z"}""");
        Send("yard/air", """{"air":{"t":12,"rh":90},"at":"2026-09-07T07:59:00Z"}""", retained: true);

        Assert.Equal(17, sensor.Read().Samples[0].Value);
    }

    [Fact]
    public void Value_ThatStandsStillForHours_CountsAsFrozen()
    {
        using MqttAirSensor sensor = Plain();
        for (int minute = 0; minute < 180; minute++)
        {
            Send("yard/t", "18.5");
            Send("yard/h", (60 + (minute % 2)).ToString(CultureInfo.InvariantCulture));
            Assert.Null(sensor.Read().NoReadingCause);
            _time.Advance(TimeSpan.FromMinutes(1));
        }

        Send("yard/t", "18.5");
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal("yard/t: it has stood at 18.5 for 180 min: check that sensor", sensor.Read().NoReadingCause);
        Send("yard/t", "18.4");
        Assert.Null(sensor.Read().NoReadingCause);
    }

    [Fact]
    public void Sensor_AskedEverySecondAndRounded_MayStandStillForAWhile()
    {
        using MqttAirSensor sensor = Plain();

        Assert.Equal(TimeSpan.FromSeconds(new MqttAirOptions().MaxAgeS), sensor.Hold);
        Assert.False(sensor.IsEmulated);
    }

    [Fact]
    public void Configuration_EachWrongSetting_IsNamedWithItsKeyAndAFix()
    {
        SensorOptions options = new() { Part = "mqtt" };
        options.Mqtt.Temperature.Topic = "yard/+";
        options.Mqtt.Temperature.ValuePointer = "air";
        options.Mqtt.Humidity.TimePointer = "/~";
        options.Mqtt.TemperatureUnit = "c";
        options.Mqtt.MaxAgeS = 1;
        List<string> errors = [];

        new MqttAirPart().Check("sensors:intakeAir", options, errors);

        Assert.Equal(6, errors.Count);
        Assert.Contains("sensors:intakeAir:mqtt:temperature:topic is \"yard/+\"; give the topic of that sensor without wildcards, for example yard/temperature", errors);
        Assert.Contains(errors, e => e.StartsWith("sensors:intakeAir:mqtt:temperature:valuePointer is \"air\"", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("sensors:intakeAir:mqtt:humidity:topic is \"\"", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("sensors:intakeAir:mqtt:humidity:timePointer", StringComparison.Ordinal));
        Assert.Contains("sensors:intakeAir:mqtt:temperatureUnit is c; give C, F or K", errors);
        Assert.Contains("sensors:intakeAir:mqtt:maxAgeS is 1; give seconds from 5 to 86400, for example 600", errors);
    }

    private MqttAirSensor Plain(Action<MqttAirOptions>? change = null)
    {
        MqttAirOptions options = new() { Temperature = { Topic = "yard/t" }, Humidity = { Topic = "yard/h" } };
        change?.Invoke(options);
        return new MqttAirSensor(SensorRole.IntakeAir, options, _messages);
    }

    private MqttAirSensor Json() => new(
        SensorRole.IntakeAir,
        new MqttAirOptions
        {
            Temperature = { Topic = "yard/air", ValuePointer = "/air/t", TimePointer = "/at" },
            Humidity = { Topic = "yard/air", ValuePointer = "/air/rh", TimePointer = "/at" },
        },
        _messages);

    private void Send(string topic, string payload, bool retained = false) => _messages.Take(topic, Encoding.UTF8.GetBytes(payload), retained);
}
