using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Sensors;

/// <summary>Gathers every error of the <c>sensors</c> section: unknown parts, real and emulated ones side by side, and what each part cannot work with.</summary>
public sealed class SensorsOptionsValidator : IValidateOptions<SensorsOptions>
{
    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, SensorsOptions options)
    {
        List<string> errors = [];
        Dictionary<(SignalSource? Source, int Bus, int Address), string> taken = [];
        string? pressureFrom = null;
        foreach ((SensorRole role, SensorOptions sensor) in options.All())
        {
            string key = $"{SensorsOptions.Section}:{role.Name}";
            if (sensor.Part == SensorsOptions.None)
            {
                continue;
            }

            SignalSource? source = SignalSourceWord.Parse(sensor.Source);
            if (source is null)
            {
                errors.Add($"{key}:source is {sensor.Source}; give emulated or real");
            }

            ISensorPart? part = SensorParts.Find(sensor.Part);
            if (part is null || !part.Roles.Contains(role))
            {
                IEnumerable<string> fitting = SensorParts.All.Where(candidate => candidate.Roles.Contains(role)).Select(candidate => candidate.Id);
                errors.Add($"{key}:part is {sensor.Part}; give one of {string.Join(", ", fitting)}, or {SensorsOptions.None}");
                continue;
            }

            part.Check(key, sensor, errors);
            if (part.GivesPressure(sensor) && (pressureFrom ??= key) != key)
            {
                errors.Add($"{key}:stationPressure is true, and so is that of {pressureFrom}; set one of them to false");
            }

            if (part is I2cPart onBus && onBus.AddressOf(sensor) is { } address
                && !taken.TryAdd((source, sensor.Bus, address), key))
            {
                errors.Add($"{key}:address is 0x{address:X2} on bus {sensor.Bus}, where {taken[(source, sensor.Bus, address)]} already is; give one of them another address or bus");
            }
        }

        string[] real = options.KeysWhere(emulated: false);
        string[] emulated = options.KeysWhere(emulated: true);
        if (!options.Proving && real.Length > 0 && emulated.Length > 0)
        {
            errors.Add($"{string.Join(", ", emulated)} {(emulated.Length == 1 ? "is" : "are")} emulated beside {string.Join(", ", real)}, which {(real.Length == 1 ? "is" : "are")} real; "
                + $"give each the source real or the part {SensorsOptions.None}, or set {SensorsOptions.Section}:proving to true while you prove parts (the verdict then stays at wait)");
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
