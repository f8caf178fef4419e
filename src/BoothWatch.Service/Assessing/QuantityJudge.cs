using BoothWatch.Readings;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Assessing;

/// <summary>Judges one quantity over all sensors that measure it: a gate for each, and neighbours must agree.</summary>
internal sealed class QuantityJudge
{
    private static readonly TimeSpan DisagreeingAfter = TimeSpan.FromMinutes(1);

    private readonly Quantity _quantity;
    private readonly QualityGate[] _gates;
    private readonly SensorPair[] _pairs;

    /// <summary>A judge of <paramref name="quantity"/>; the first sensor is used while it answers.</summary>
    public QuantityJudge(Quantity quantity, IEnumerable<ISensor> sensors)
    {
        _quantity = quantity;
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
        Reading[] all = [.. _gates.Select(gate => gate.Read(now))];
        Reading reading = all[0];
        for (int i = 0; i < _pairs.Length; i++)
        {
            reading = _pairs[i].Combine(reading, all[i + 1], now);
        }

        others.AddRange(all.Where(other => other.Sensor != reading.Sensor));
        return reading;
    }

    // How far stations, not parts, may differ in one place: common practice, no source.
    private static double ToleranceOf(Quantity quantity) => quantity switch
    {
        Quantity.BoothTemperature or Quantity.IntakeTemperature or Quantity.PieceTemperature => 1,
        Quantity.BoothHumidity or Quantity.IntakeHumidity => 5,
        Quantity.StationPressure => 300,
        Quantity.FilterPressureDrop => 10,
        Quantity.ExhaustProof => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Unknown quantity."),
    };
}
