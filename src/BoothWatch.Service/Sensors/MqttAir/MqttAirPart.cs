using System.Globalization;

namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>Air that another sensor measures and sends by MQTT, in the configuration.</summary>
public sealed class MqttAirPart : ISensorPart
{
    /// <inheritdoc/>
    public string Id => "mqtt";

    /// <inheritdoc/>
    public IReadOnlyList<SensorRole> Roles { get; } = [SensorRole.IntakeAir];

    /// <inheritdoc/>
    public void Check(string key, SensorOptions options, ICollection<string> errors)
    {
        MqttAirOptions mqtt = options.Mqtt;
        CheckValue($"{key}:mqtt:temperature", mqtt.Temperature, "temperature", errors);
        CheckValue($"{key}:mqtt:humidity", mqtt.Humidity, "humidity", errors);
        if (mqtt.TemperatureUnit is not ("C" or "F" or "K"))
        {
            errors.Add($"{key}:mqtt:temperatureUnit is {mqtt.TemperatureUnit}; give C, F or K");
        }

        Range($"{key}:mqtt:maxAgeS", mqtt.MaxAgeS, 5, 86_400, "seconds", "600", errors);
        Range($"{key}:mqtt:frozenAfterS", mqtt.FrozenAfterS, 600, 86_400, "seconds", "10800", errors);
        Range($"{key}:mqtt:temperatureToleranceC", mqtt.TemperatureToleranceC, 0.01, 5, "°C", "0.5", errors);
        Range($"{key}:mqtt:humidityTolerancePct", mqtt.HumidityTolerancePct, 0.1, 20, "%", "3", errors);
    }

    /// <inheritdoc/>
    public ISensor Create(SensorRole role, SensorOptions options, SensorWiring wiring) => new MqttAirSensor(role, options.Mqtt, wiring.Messages);

    private static void CheckValue(string key, MqttValueOptions value, string what, ICollection<string> errors)
    {
        if (value.Topic.Length is 0 or > 65_535 || value.Topic.AsSpan().ContainsAny('+', '#', '\0'))
        {
            errors.Add($"{key}:topic is \"{value.Topic}\"; give the topic of that sensor without wildcards, for example yard/{what}");
        }

        if (!JsonPointer.IsValid(value.ValuePointer))
        {
            errors.Add($"{key}:valuePointer is \"{value.ValuePointer}\"; give a JSON pointer, for example /air/{what}, or leave it empty where the payload is the number");
        }

        if (!JsonPointer.IsValid(value.TimePointer))
        {
            errors.Add($"{key}:timePointer is \"{value.TimePointer}\"; give a JSON pointer, for example /time, or leave it empty where no time is sent");
        }
    }

    private static void Range(string key, double value, double least, double most, string unit, string example, ICollection<string> errors)
    {
        if (!(value >= least && value <= most))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"{key} is {value}; give {unit} from {least} to {most}, for example {example}"));
        }
    }
}
