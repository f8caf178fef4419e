using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Configuration;

/// <summary>
/// Refuses a real light beside emulated sensors: a script would light green over a real booth. The other way round is no harm:
/// an emulated light beside real sensors is a booth without lamps.
/// </summary>
/// <param name="configuration">The configuration: the sensors are read as they stand, good or not, for their own check reports them.</param>
internal sealed class RealLightValidator(IConfiguration configuration) : IValidateOptions<LightOptions>
{
    public ValidateOptionsResult Validate(string? name, LightOptions options)
    {
        var sensors = (SensorsOptions)ConfigurationSections.Bind(configuration, typeof(SensorsOptions));
        string[] emulated = sensors.KeysWhere(emulated: true);
        if (SignalSourceWord.Parse(options.Source) != SignalSource.Real || sensors.Proving || emulated.Length == 0)
        {
            return ValidateOptionsResult.Success;
        }

        return ValidateOptionsResult.Fail(
            $"light:source is {options.Source}, and {string.Join(", ", emulated)} {(emulated.Length == 1 ? "is" : "are")} emulated; "
            + $"give the light the source emulated, or each of these the source real, or set {SensorsOptions.Section}:proving to true while you prove parts (the verdict then stays at wait)");
    }
}
