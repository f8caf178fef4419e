using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>The fault that the configuration scripts for one emulated sensor.</summary>
public sealed class DemoFault
{
    private readonly string _sensor;
    private readonly BusFault _kind;
    private readonly TimeSpan _from;
    private readonly TimeSpan _until;

    /// <summary>Takes the fault from checked options.</summary>
    public DemoFault(IOptions<DemoOptions> options)
    {
        DemoFaultOptions fault = options.Value.Fault;
        _sensor = fault.Sensor;
        _kind = Enum.Parse<BusFault>(fault.Kind, ignoreCase: true);
        _from = TimeSpan.ParseExact(fault.From, @"hh\:mm", CultureInfo.InvariantCulture);
        _until = TimeSpan.ParseExact(fault.Until, @"hh\:mm", CultureInfo.InvariantCulture);
    }

    /// <summary>What is wrong with the sensor of a role at a shop time.</summary>
    public BusFault Of(SensorRole role, ShopTime time) =>
        role.Name == _sensor && time.TimeOfDay >= _from && time.TimeOfDay < _until ? _kind : BusFault.None;
}
