using System.Collections.Immutable;
using BoothWatch.Readings;

namespace BoothWatch.Service.Assessing;

/// <summary>
/// The sensors that may not be used now, because somebody checks them or because they failed. It only ever makes a reading worse. Reading is a
/// read of one reference, so that the loop never waits. Safe for several threads.
/// </summary>
public sealed class SensorHolds
{
    private volatile ImmutableDictionary<string, SensorHold> _holds = ImmutableDictionary<string, SensorHold>.Empty;

    /// <summary>The hold on a sensor; null when there is none.</summary>
    public SensorHold? Of(string sensor) => _holds.GetValueOrDefault(sensor);

    /// <summary>A reading as the hold on its sensor leaves it. A reading that was not good before has no value for the check either.</summary>
    public Reading Apply(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return Of(reading.Sensor) is not { } hold || !hold.Covers(reading.Quantity) || (hold.Quality != ReadingQuality.BeingChecked && !reading.IsGood) ? reading
            : reading.IsGood ? reading with { Quality = hold.Quality, Cause = hold.Cause }
            : reading with { Quality = hold.Quality, Value = null, Cause = hold.Cause };
    }

    /// <summary>True when the sensor of a reading is held and no other may take its place.</summary>
    public bool ForbidsSpare(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return Of(reading.Sensor) is { SpareMayStandIn: false } hold && hold.Covers(reading.Quantity);
    }

    /// <summary>Puts holds in force, in the place of those before, from the next reading on.</summary>
    internal void Set(ImmutableDictionary<string, SensorHold> holds) => _holds = holds;
}
