using System.Collections.Immutable;
using BoothWatch.Readings;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Assessing;

/// <summary>
/// Where the sensors post what they measured and the assessment loop takes what is to be believed of it.
/// Ages run on the monotonic clock, so a corrected wall clock makes nothing old or young.
/// </summary>
public sealed class SnapshotBoard
{
    private readonly TimeProvider _time;
    private readonly ClockProof _clock;
    private readonly Lock _lock = new();
    private readonly long _start;
    private readonly ImmutableArray<QuantityJudge> _judges;
    private readonly bool _isProving;

    /// <summary>A board for the configured sensors.</summary>
    /// <param name="sensors">The sensors.</param>
    /// <param name="clock">Whether the wall clock may be believed.</param>
    /// <param name="time">The clock.</param>
    /// <param name="isProving">True while parts are being proved, so that emulated readings may be mixed in with real ones.</param>
    /// <param name="holds">Sensors that may not be used whatever they read; null: none.</param>
    public SnapshotBoard(IEnumerable<ISensor> sensors, ClockProof clock, TimeProvider time, bool isProving = false, SensorHolds? holds = null)
    {
        (_clock, _time, _isProving) = (clock, time, isProving);
        _start = time.GetTimestamp();
        _judges =
        [
            .. sensors
                .SelectMany(sensor => sensor.Quantities, (sensor, quantity) => (sensor, quantity))
                .GroupBy(entry => entry.quantity, entry => entry.sensor)
                .Select(group => new QuantityJudge(group.Key, group, holds ?? new SensorHolds())),
        ];
    }

    /// <summary>Time since the board was made, by the monotonic clock.</summary>
    public TimeSpan Elapsed => _time.GetElapsedTime(_start);

    /// <summary>Takes the answer of a sensor, as of now.</summary>
    public void Post(ISensor sensor, SensorAnswer answer)
    {
        lock (_lock)
        {
            TimeSpan now = Elapsed;
            foreach (QuantityJudge judge in _judges)
            {
                judge.Take(sensor.Name, answer, now);
            }
        }
    }

    /// <summary>True when a sensor has a neighbour for each quantity that both measure, and they are good and agree now: then the neighbour may stand in.</summary>
    /// <param name="sensor">Name of the sensor.</param>
    public bool SpareAgrees(string sensor)
    {
        lock (_lock)
        {
            TimeSpan now = Elapsed;
            bool?[] agree = [.. _judges.Select(judge => judge.SpareAgrees(sensor, now)).Where(agrees => agrees is not null)];
            return agree.Length > 0 && agree.All(agrees => agrees == true);
        }
    }

    /// <summary>What is to be believed now.</summary>
    public BoothSnapshot Take()
    {
        lock (_lock)
        {
            TimeSpan now = Elapsed;
            List<Reading> others = [];
            return new BoothSnapshot(
                _time.GetUtcNow(),
                _clock.IsProven(),
                _judges.Select(judge => judge.Read(now, others)).ToImmutableDictionary(reading => reading.Quantity))
            {
                Others = [.. others],
                IsProving = _isProving,
            };
        }
    }
}
