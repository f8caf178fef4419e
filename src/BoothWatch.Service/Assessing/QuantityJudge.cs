using BoothWatch.Readings;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Assessing;

/// <summary>Judges one quantity over all sensors that measure it: a gate for each, and neighbours must agree.</summary>
internal sealed class QuantityJudge
{
    private static readonly TimeSpan DisagreeingAfter = TimeSpan.FromMinutes(1);

    private readonly Quantity _quantity;
    private readonly SensorHolds _holds;
    private readonly QualityGate[] _gates;
    private readonly SensorPair[] _pairs;

    /// <summary>A judge of <paramref name="quantity"/>; the first sensor is used while it answers.</summary>
    public QuantityJudge(Quantity quantity, IEnumerable<ISensor> sensors, SensorHolds holds)
    {
        (_quantity, _holds) = (quantity, holds);
        _gates =
        [
            .. sensors.Select(sensor => new QualityGate(
                quantity, sensor.Name, sensor.Hold is { } hold ? QualityLimits.OfTypedIn(quantity, hold) : QualityLimits.Of(quantity))),
        ];
        _pairs = [.. _gates.Skip(1).Select(_ => new SensorPair(ToleranceOf(quantity), DisagreeingAfter))];
    }

    /// <summary>Takes what belongs to this quantity from an answer of <paramref name="sensor"/>.</summary>
    public void Take(string sensor, SensorAnswer answer, TimeSpan now)
    {
        foreach (QualityGate gate in _gates.Where(gate => gate.Sensor == sensor))
        {
            if (answer.Samples.FirstOrDefault(sample => sample.Quantity == _quantity) is { } sample)
            {
                gate.Accept(sample.Value, sample.StandardUncertainty, now - sample.Age);
            }
            else
            {
                gate.Fail(answer.NoReadingCause ?? "its answer lacks this value", now);
            }
        }
    }

    /// <summary>The one reading of this quantity.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="others">Takes what the other sensors of this quantity say.</param>
    public Reading Read(TimeSpan now, List<Reading> others)
    {
        Reading[] all = [.. _gates.Select(gate => _holds.Apply(gate.Read(now)))];
        Reading reading = all[0];
        for (int i = 0; i < _pairs.Length; i++)
        {
            reading = _pairs[i].Combine(reading, all[i + 1], now);
        }

        reading = all.FirstOrDefault(_holds.ForbidsSpare) ?? reading;
        others.AddRange(all.Where(other => other.Sensor != reading.Sensor));
        return reading;
    }

    /// <summary>True when every other sensor of this quantity is good and agrees with the first now, null when there is no other or not this one.</summary>
    /// <param name="sensor">Name of a sensor.</param>
    /// <param name="now">The moment.</param>
    public bool? SpareAgrees(string sensor, TimeSpan now)
    {
        if (_pairs.Length == 0 || !_gates.Any(gate => gate.Sensor == sensor))
        {
            return null;
        }

        Reading[] all = [.. _gates.Select(gate => _holds.Apply(gate.Read(now)))];
        return _pairs.Select((pair, i) => pair.Agree(all[0], all[i + 1])).All(agrees => agrees);
    }

    /// <summary>How far stations, not parts, may differ in one place, in the unit of the quantity: common practice, no source.</summary>
    public static double ToleranceOf(Quantity quantity) => quantity switch
    {
        Quantity.BoothTemperature or Quantity.IntakeTemperature or Quantity.PieceTemperature => 1,
        Quantity.BoothHumidity or Quantity.IntakeHumidity => 5,
        Quantity.StationPressure => 300,
        Quantity.FilterPressureDrop => 10,
        Quantity.ExhaustProof => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Unknown quantity."),
    };
}
