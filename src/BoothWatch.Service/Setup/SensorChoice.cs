using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Setup;

/// <summary>What a person chose for one role.</summary>
/// <param name="Role">The role.</param>
/// <param name="Part">Kind of part in the configuration; <see cref="SensorsOptions.None"/> when nothing is fitted.</param>
/// <param name="Source">real or emulated; null leaves what the file says.</param>
/// <param name="Bus">Parts on I²C: number of the bus; null leaves what the file says.</param>
/// <param name="Address">Parts on I²C: address in hexadecimal; null leaves what the file says.</param>
/// <param name="Pin">contact: GPIO number; null leaves what the file says.</param>
internal sealed record SensorChoice(SensorRole Role, string Part, string? Source, int? Bus, string? Address, int? Pin)
{
    /// <summary>The settings of the choice below <c>sensors:role</c>, without those that are left.</summary>
    public IEnumerable<(string Key, object Value)> Settings()
    {
        (string Key, object? Value)[] all = [("part", Part), ("source", Source), ("bus", Bus), ("address", Address), ("pin", Pin)];
        return all.Where(setting => setting.Value is not null).Select(setting => ($"{SensorsOptions.Section}:{Role.Name}:{setting.Key}", setting.Value!));
    }
}
