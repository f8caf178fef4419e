using System.Collections;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Sensors;

/// <summary>The configured sensors, in the order of their roles; owns them.</summary>
public sealed class SensorSet : IEnumerable<ISensor>, IDisposable
{
    private readonly ISensor[] _sensors;

    /// <summary>Makes every sensor that the options name. No real hardware is touched before the first reading.</summary>
    public SensorSet(IOptions<SensorsOptions> options, SensorWiring wiring)
    {
        _sensors =
        [
            .. options.Value.All()
                .Where(entry => entry.Options.Part != SensorsOptions.None)
                .Select(entry => SensorParts.Find(entry.Options.Part)!.Create(entry.Role, entry.Options, wiring)),
        ];
    }

    /// <inheritdoc/>
    public IEnumerator<ISensor> GetEnumerator() => ((IEnumerable<ISensor>)_sensors).GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Disposes every sensor.</summary>
    public void Dispose()
    {
        foreach (ISensor sensor in _sensors)
        {
            sensor.Dispose();
        }
    }
}
