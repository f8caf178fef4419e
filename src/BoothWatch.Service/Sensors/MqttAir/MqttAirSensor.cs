using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>Air temperature and humidity that another sensor sends by MQTT. Gives a reading while both may be believed.</summary>
public sealed class MqttAirSensor : ISensor
{
    private readonly MqttValue _temperature;
    private readonly MqttValue _humidity;
    private readonly SensorRole _role;
    private readonly (double Temperature, double Humidity) _uncertainty;

    /// <summary>A sensor that listens to its topics.</summary>
    public MqttAirSensor(SensorRole role, MqttAirOptions options, AirMessages messages)
    {
        Name = role.Name;
        Description = $"MQTT, {options.Temperature.Topic} and {options.Humidity.Topic}";
        Hold = TimeSpan.FromSeconds(options.MaxAgeS);
        _role = role;
        _uncertainty = (Uncertainty.FromTolerances(options.TemperatureToleranceC), Uncertainty.FromTolerances(options.HumidityTolerancePct));
        _temperature = new MqttValue(role.Temperature!.Value, options.Temperature, ToCelsius(options.TemperatureUnit), options, messages.Time);
        _humidity = new MqttValue(role.Humidity!.Value, options.Humidity, pct => pct, options, messages.Time);
        messages.Listen(options.Temperature.Topic, _temperature.Take);
        messages.Listen(options.Humidity.Topic, _humidity.Take);
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public string Description { get; }

    /// <inheritdoc/>
    public IReadOnlyList<Quantity> Quantities => [_role.Temperature!.Value, _role.Humidity!.Value];

    /// <inheritdoc/>
    public bool IsEmulated => false;

    /// <inheritdoc/>
    /// <remarks>It is asked every second and sends every minute or so, rounded; it looks itself for a value that stands too long.</remarks>
    public TimeSpan? Hold { get; }

    /// <inheritdoc/>
    public SensorAnswer Read() => (_temperature.Read(_uncertainty.Temperature), _humidity.Read(_uncertainty.Humidity)) switch
    {
        (({ } temperature, _), ({ } humidity, _)) => SensorAnswer.Of(temperature, humidity),
        ((_, { } cause), _) => SensorAnswer.NoReading(cause),
        (_, (_, var cause)) => SensorAnswer.NoReading(cause!),
    };

    /// <inheritdoc/>
    public void Dispose()
    {
    }

    private static Func<double, double> ToCelsius(string unit) => unit switch
    {
        "F" => fahrenheit => (fahrenheit - 32) / 1.8,
        "K" => kelvin => kelvin - 273.15,
        _ => celsius => celsius,
    };
}
