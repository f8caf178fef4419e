using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Configuration;

/// <summary>
/// Finds a GPIO number that a lamp and a sensor both take from the same board. Neither section can see this alone, and at run time
/// it would show only as a lamp or a contact that fails.
/// </summary>
/// <param name="configuration">The configuration: the sensors are read as they stand, good or not, for their own check reports them.</param>
internal sealed class SharedPinValidator(IConfiguration configuration) : IValidateOptions<LightOptions>
{
    public ValidateOptionsResult Validate(string? name, LightOptions options)
    {
        if (SignalSourceWord.Parse(options.Source) is not { } source)
        {
            return ValidateOptionsResult.Skip;
        }

        var sensors = (SensorsOptions)ConfigurationSections.Bind(configuration, typeof(SensorsOptions));
        ILookup<int, string> taken = sensors.All()
            .Where(sensor => SignalSourceWord.Parse(sensor.Options.Source) == source)
            .Select(sensor => (Key: $"{SensorsOptions.Section}:{sensor.Role.Name}:pin", Pin: SensorParts.Find(sensor.Options.Part)?.PinOf(sensor.Options)))
            .Where(sensor => sensor.Pin is not null)
            .ToLookup(sensor => sensor.Pin!.Value, sensor => sensor.Key);
        string[] errors =
        [
            .. options.Pins()
                .Where(lamp => lamp.Pin is not null)
                .SelectMany(lamp => taken[lamp.Pin!.Value], (lamp, sensor) =>
                    $"{lamp.Key} is {lamp.Pin}, and so is {sensor}; give each its own GPIO number"),
        ];
        return errors.Length == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
